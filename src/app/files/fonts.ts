import regularUrl from 'dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf?url';
import boldUrl from 'dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf?url';
import { fontsOnce } from '../../documents/paper-source.ts';

/** The fonts that go into a PDF: fetched from where the page came from when the first PDF is made. */
export const fontsFetch = fontsOnce(async () => {
  const [regular, bold] = await Promise.all([bytesOf(regularUrl), bytesOf(boldUrl)]);
  return { regular, bold };
});

async function bytesOf(url: string): Promise<Uint8Array> {
  const answer = await fetch(url);
  if (!answer.ok) throw new Error(`the server answered ${answer.status}`);
  return new Uint8Array(await answer.arrayBuffer());
}
