// Paths as addresses: RFC 3986, "Uniform Resource Identifier (URI): Generic Syntax", 2.1, 3.3 and 4.2; RFC 8089, "The file
// URI Scheme", appendix E.2 for drives.
import { expect, test } from 'vitest';
import { addressOf, plainPath } from '#answers/addresses';

test.each([
  ['plan.screed', 'plan.screed'],
  ['sub/plan.screed', 'sub/plan.screed'],
  ['../other/plan.screed', '../other/plan.screed'],
  ['my house/größe #2 100%.screed', 'my%20house/gr%C3%B6%C3%9Fe%20%232%20100%25.screed'],
  ['a:b.screed', 'a%3Ab.screed'],
  ['back\\slash.screed', 'back%5Cslash.screed'],
  ['lone \ud800', 'lone%20%EF%BF%BD'],
  ['/home/me/plan.screed', 'file:///home/me/plan.screed'],
  ['C:/plans/my plan.screed', 'file:///C:/plans/my%20plan.screed'],
  ['c:\\plans\\a.screed', 'file:///C:/plans/a.screed'],
  ['\\\\server\\plans\\a.screed', 'file://server/plans/a.screed'],
  ['//server/plans/a.screed', 'file://server/plans/a.screed'],
])('%s → %s', (path, address) => {
  expect(addressOf(path)).toBe(address);
  expect(() => new URL(address, 'file:///base/')).not.toThrow();
});

test('a path of Windows has / between its parts', () => {
  expect(plainPath('C:\\plans\\a.screed')).toBe('C:/plans/a.screed');
  expect(plainPath('\\\\server\\a.screed')).toBe('//server/a.screed');
  expect(plainPath('not\\windows.screed')).toBe('not\\windows.screed');
});
