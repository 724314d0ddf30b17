// The cottage typed letter by letter in one session: after each letter an answer and no exception, and every fiftieth
// answer is that of a fresh look at the same text.
import { expect, test } from 'vitest';
import { analyse, emptyMemory } from '#server/pipeline';
import { builtIn, sampleTexts } from '#tests/support/built-in';
import { pictureOf } from '#tests/support/picture';

test('the cottage, letter by letter', () => {
  const library = builtIn();
  const whole = sampleTexts('cottage');
  const root = 'samples/cottage/plan.screed';
  const memory = emptyMemory();
  const typed: Record<string, string> = { [root]: '' };
  let letters = 0;
  const paths = [root, ...Object.keys(whole).filter((path) => path !== root)];
  for (const path of paths) {
    const text = whole[path]!;
    for (let length = 1; length <= text.length; length++) {
      typed[path] = text.slice(0, length);
      const texts = { ...typed };
      const plan = analyse({ root, texts, library }, memory);
      letters += 1;
      if (letters % 50 === 0) expect(pictureOf(plan)).toEqual(pictureOf(analyse({ root, texts, library })));
    }
  }
  expect(letters).toBeGreaterThan(30_000);
}, 1_800_000);
