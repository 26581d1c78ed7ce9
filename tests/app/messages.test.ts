import { expect, test } from 'vitest';
import { fileStem } from '../../src/app/parts/format.ts';
import { messagesOf } from '../../src/app/parts/messages.ts';
import { oneLine } from '../../src/documents/words.ts';
import { planEmpty } from '../../src/plan/empty.ts';
import { planResolve } from '../../src/plan/resolve.ts';

const outline = [
  [0, 0],
  [4000, 0],
  [4000, 3000],
] as const;
const planWith = (...names: readonly string[]) =>
  planResolve({ ...planEmpty('Plan'), rooms: names.map((name, i) => ({ id: `r${i}`, name, outline })) });

test('figures in a sentence take the decimal mark of the reader; names, ids and rule sets keep their points', () => {
  const words = messagesOf(planWith('Store 1.5', 'Hall'), ',');
  expect(words('Joint J3 closes by 6.2 mm; its profile takes 5.0 mm.')).toMatch(
    /^Joint J3 closes by 6,2.mm; .* 5,0.mm\.$/,
  );
  expect(words('Store 1.5 and Hall overlap by 0.25 m².')).toMatch(/^Store 1\.5 and Hall overlap by 0,25.m²\.$/);
  expect(words('The rule set "DTU 52.2" is written for 8.5 m.')).toMatch(/"DTU 52\.2" is written for 8,5.m\.$/);
  expect(messagesOf(planWith('Hall'), '.')('It is 0.6 or less.')).toBe('It is 0.6 or less.');
});

test('a name that forces a direction of writing turns nothing round, one that has another is closed in', () => {
  expect(oneLine('Hall\u202ella')).toBe('Halllla');
  expect(messagesOf(planWith('Hall\u202ella'))('No doorway joins Hall\u202ella to another room.')).not.toContain(
    '\u202e',
  );
  expect(messagesOf(planWith('מטבח'))('No doorway joins מטבח to another room.')).toContain('\u2068מטבח\u2069');
});

test('a name of ten thousand letters is cut within a sentence and in the name of a file', () => {
  const name = 'Hall'.repeat(2500);
  const said = messagesOf(planWith(name))(`No doorway or open side joins ${name} to another room.`);
  expect(said.length).toBeLessThan(160);
  expect(said).toMatch(/Hal?…? to another room\.$|… to another room\.$/);
  expect(fileStem(name).length).toBeLessThanOrEqual(80);
});
