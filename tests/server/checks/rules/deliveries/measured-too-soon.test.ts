// Metal cut to a roof, tops cut to cabinets: what is made to measure waits for what is measured. Common practice, and as told in
// brydur.blogspot.com and michaelrobertconstruction.com, where tops were ordered from the template once the cabinets stood.
import { expect, test } from 'vitest';
import { checked } from '#tests/support/checked';

const CODE = 'deliveries/measured-too-soon';

const roof = (delivery: string, more = '') =>
  checked(`plan p
  start 2027-03-01
  workweek mon-fri 8h
level main
  footprint 24' x 32'
roof main over main
  shape gable 6:12
  roofing standing-seam
supplier yard
trade crew crew of 2
task deck does sheathe-roof takes 5d by crew
delivery metal brings standing-seam from yard, lead ${delivery}
task cover does lay-roofing by crew after deck, metal
${more}`);

test('says what it should wait for: a warning where it comes before, a note where it is right by luck', () => {
  expect(roof('2 weeks').told).toContain(`note ${CODE} metal`);
  expect(roof('2 days').told).toContain(`warning ${CODE} metal`);
  expect(roof('2 days').messages(CODE)).toEqual([
    '"metal" brings Standing-seam metal roof, which is made to what stands, but it does not wait for "deck": whoever orders it measures the drawing, and what is cut an inch short is bought twice. Write "measured after deck" with its lead.',
  ]);
});

test('any chain of links holds it, and what is done is a fact', () => {
  expect(roof('2 weeks, measured after deck').messages(CODE)).toEqual([]);
  expect(roof('2 weeks, after deck').messages(CODE)).toEqual([]);
  expect(roof('2 weeks', 'progress 2027-03-08\n  deck started 2027-03-01, finished 2027-03-05\n').messages(CODE)).toEqual([]);
});

test('tops are made to the cabinets', () => {
  const plan = (delivery: string) =>
    checked(`room kitchen
  size 10' x 12'
  cabinets 8' base-cabinet
  counter 20 sf counter-top
supplier shop
trade joiners crew of 2
task boxes does set-cabinets by joiners
delivery tops brings counter-top from shop, lead 2 weeks${delivery}
task set does set-tops by joiners after boxes, tops
`).messages(CODE);
  expect(plan('').join()).toContain('does not wait for "boxes"');
  expect(plan(', measured after boxes')).toEqual([]);
});
