import { expect, test } from 'vitest';
import { layersNote, layersRead, layersText } from '../../src/app/panels/papers/insulation-layers.ts';

const layers = (text: string) => {
  const reading = layersRead(text);
  return reading.kind === 'layers' ? reading.layersMm : null;
};
const why = (text: string) => {
  const reading = layersRead(text);
  return reading.kind === 'refused' ? reading.why : null;
};

test('layers are read with a plus, a semicolon, a stroke, a space or a comma and a space between', () => {
  for (const text of ['20 + 10', '20+10', '20;10', '20 / 10', '20 10', '20, 10', '20 mm + 10 mm', ' 20mm 10mm ']) {
    expect(layers(text), text).toEqual([20, 10]);
  }
  expect(layers('30')).toEqual([30]);
});

test('a comma is a decimal mark where something else parts the layers', () => {
  expect(layers('12,5 + 20')).toEqual([12.5, 20]);
  expect(layers('12.5 + 20')).toEqual([12.5, 20]);
  expect(layersText([12.5, 20])).toBe('12.5 + 20');
});

test('a comma that may part two layers or be a decimal mark is asked back, and nothing is made of it', () => {
  expect(why('30,30')).toBe('Write layers with + between, as 30 + 30.');
  expect(why('30,5')).toBe('Write layers with + between, as 30 + 5.');
  expect(why('30,30,20')).toBe('Write layers with + between, as 30 + 30 + 20.');
  expect(why('30,30 + 20')).toBe('Write layers with + between, as 30 + 30 + 20.');
});

test('what is no thickness of a layer is refused', () => {
  for (const text of ['0 + 30', '-20 + 10', '20 + ', 'two', '20 x 10', '1001 + 20', '=20+10', '1e3 + 20']) {
    expect(why(text), text).toBe('Write thicknesses in mm, to 1000 each, with + between, as 20 + 10.');
  }
});

test('layers that make up the insulation are taken without a word of caution', () => {
  expect(layersNote([20, 10], [30, 30]).tone).toBe('quiet');
  expect(layersNote([], [30, null]).tone).toBe('quiet');
  // A floor on the slab has no insulation that layers could make up.
  expect(layersNote([20, 10], [30, 0]).tone).toBe('quiet');
  // 12.5 + 17.6 is 30.1, which no machine adds up to the last digit.
  expect(layersNote([12.5, 17.6], [30.1]).tone).toBe('quiet');
});

test('layers that do not make up the insulation say their sum, what it must be, and what is counted until then', () => {
  expect(layersNote([20, 10], [50, 50])).toEqual({
    tone: 'caution',
    words:
      '20 + 10 is 30 mm; the insulation is 50 mm. Until the layers add up to 50 mm, the take-off counts one layer.',
  });
  expect(layersNote([30], [50]).words).toBe(
    'This is 30 mm; the insulation is 50 mm. Until the layers add up to 50 mm, the take-off counts one layer.',
  );
});

test('rooms whose insulation the layers do not make up are told by it, and so is insulation that is not entered', () => {
  expect(layersNote([20, 10], [60, 30, 50, null]).words).toBe(
    '20 + 10 is 30 mm. Where the insulation is 50 mm, 60 mm or not entered, the take-off counts one layer.',
  );
  expect(layersNote([20, 10], [null]).words).toBe(
    '20 + 10 is 30 mm. The build-up has no thickness of insulation: until one of 30 mm is entered, the take-off counts one layer.',
  );
});
