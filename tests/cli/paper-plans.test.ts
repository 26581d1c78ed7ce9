import { describe, expect, it } from 'vitest';
import { pagesPdf } from '../../src/documents/pdf.ts';
import { pageSvg } from '../../src/documents/svg.ts';
import { shippedFonts } from '../documents/paper-fixture.ts';
import { bays, inFolder, planText, write } from './run.ts';

const about = { title: 'Hall', subject: 'Bays', part: 'Bays' };
const page = { ...about, paper: 'A4', widthMm: 297, heightMm: 210, scale: null, groups: [] };

describe('a paper given as a plan', () => {
  it('is read as the plan that it carries', () =>
    inFolder(async (folder) => {
      const fonts = await shippedFonts();
      const text = planText('Carried', true);
      write(folder, 'plan.json', text);
      write(folder, 'sheet.svg', pageSvg(page, { planText: text }));
      write(folder, 'sheet.pdf', await pagesPdf([page], { title: 'Hall', date: '2027-03-01', planText: text, fonts }));
      const { status, out, err } = await bays(['--json', 'plan.json', 'sheet.svg', 'sheet.pdf'], folder);
      expect([status, err]).toEqual([1, '']);
      const [plan, svg, pdf] = out.trimEnd().split('\n');
      expect(JSON.parse(plan ?? '').plan).toBe('Carried');
      expect([svg, pdf]).toEqual([plan, plan]);
    }));

  it('says so where it carries none', () =>
    inFolder(async (folder) => {
      write(folder, 'bare.svg', pageSvg(page));
      write(folder, 'other.pdf', '%PDF-1.4\n%%EOF\n');
      write(folder, 'locked.pdf', '%PDF-1.7\ntrailer << /Size 9 /Root 1 0 R /Encrypt 8 0 R >>\n%%EOF\n');
      const { status, err } = await bays(['--json', 'bare.svg', 'other.pdf', 'locked.pdf'], folder);
      expect(status).toBe(2);
      expect(err.trimEnd().split('\n')).toEqual([
        ...['bare.svg', 'other.pdf'].map((name) => `${name}: carries no plan: only papers made by this program do`),
        'locked.pdf: is locked with a password: save it without one, and give that',
      ]);
    }));
});
