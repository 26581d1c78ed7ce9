import { expect, test } from 'vitest';
import { itemsKeyed, noItems } from '../../src/app/panels/papers/item-keys.ts';

const [a, b, c, d] = [{ of: 'a' }, { of: 'b' }, { of: 'c' }, { of: 'd' }];
const three = itemsKeyed(noItems, [a, b, c]);
const [keyA, keyB, keyC] = three.keys;

test('what is open beside an item stays with it when the one before is taken away', () => {
  expect(itemsKeyed(three, [b, c]).keys).toEqual([keyB, keyC]);
});

test('what is open beside an item goes along when it is moved', () => {
  expect(itemsKeyed(three, [b, a, c]).keys).toEqual([keyB, keyA, keyC]);
});

test('an item that is changed where it stands is the same item', () => {
  expect(itemsKeyed(three, [a, d, c]).keys).toEqual([keyA, keyB, keyC]);
});

test('an item that comes is a new one, though another went before', () => {
  const added = itemsKeyed(itemsKeyed(three, [a, b]), [a, b, d]).keys;
  expect(added.slice(0, 2)).toEqual([keyA, keyB]);
  expect(three.keys).not.toContain(added[2]);
});
