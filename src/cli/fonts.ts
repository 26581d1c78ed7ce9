import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { fontsOnce } from '../documents/paper-source.ts';

const { resolve } = createRequire(import.meta.url);

/** The fonts that go into a PDF. */
export const fontsRead = fontsOnce(async () => {
  const bytes = async (name: string) => new Uint8Array(await readFile(resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`)));
  const [regular, bold] = await Promise.all([bytes('DejaVuSansCondensed'), bytes('DejaVuSansCondensed-Bold')]);
  return { regular, bold };
});
