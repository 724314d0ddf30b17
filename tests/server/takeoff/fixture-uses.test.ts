// What fixtures and devices take in their own sizes, in feet and in metres; latches on doors that swing; bases as wide as posts;
// posts cut from sticks; headers by the size told; batts by the spacing; vents by their free area.
import { expect, test } from 'vitest';
import { amount } from '#tests/support/amounts';
import { planOf } from '#tests/support/plan';

const built = (text: string) => planOf(text, { library: 'built-in' });
const room = (lines: string, head = '') =>
  `${head}level main\n  footprint 20' x 20'\n  height 8'\nroom r on main\n  size 10' x 10'\n${lines}`;

test('a toilet takes a drain of three inches, half-inch water and its own stop; a basin other sizes', () => {
  const plan = built(room('  fixtures 2 toilet, 1 basin\n'));
  expect(amount(plan.purchase('waste-pipe 3"').net, 'ft')).toBeCloseTo(30, 9);
  expect(amount(plan.purchase('waste-pipe 1 1/2"').net, 'ft')).toBeCloseTo(15, 9);
  expect(amount(plan.purchase('water-pipe 1/2"').net, 'ft')).toBeCloseTo(2 * 20 + 30, 9);
  expect(plan.purchase('supply-stop').bought.value).toBe(2 + 2);
  expect(plan.purchase('wax-ring').bought.value).toBe(2);
  // Its row stands in place of what running drains takes for any fixture.
  expect(plan.takeOff.lines.filter(({ item }) => item === 'waste-pipe')).toEqual([]);
});

test('a plan in metres takes pipe and cable in metric sizes', () => {
  const plan = built(room('  fixtures 1 toilet\n  devices 3 light\n', 'plan p\n  units metric\n'));
  expect(amount(plan.purchase('waste-pipe 110 mm').net, 'm')).toBeCloseTo(4.5, 9);
  expect(amount(plan.purchase('cable-3g1-5').net, 'm')).toBeCloseTo(21, 9);
  expect(plan.takeOff.purchases().map(({ item }) => item)).not.toContain('cable-14-2');
});

test('a boot through the roof counts where somebody sets boots', () => {
  const bought = (text: string) =>
    built(text)
      .takeOff.purchases()
      .map(({ item }) => item);
  const text = room('  fixtures 1 toilet\n');
  expect(bought(text)).not.toContain('pipe-boot 3"');
  expect(bought(`${text}task boots does set-roof-boots\n`)).toContain('pipe-boot 3"');
});

test('only doors that swing have a latch and a stop, and only those that swing outside a lock', () => {
  const plan = built(
    `door d-a 3' x 7'\ndoor d-b 5' x 7', bifold\ndoor d-c 3' x 7', pocket\ndoor d-d 3' x 7', exterior\ndoor d-e 6' x 7', exterior, sliding\n${room('  doors 2 d-a, 1 d-b, 1 d-c, 1 d-d, 1 d-e\n')}`,
  );
  expect(plan.purchase('passage-set').bought.value).toBe(2);
  expect(plan.purchase('pocket-set').bought.value).toBe(1);
  expect(plan.purchase('entry-lock').bought.value).toBe(1);
  expect(plan.purchase('sill-pan').bought.value).toBe(2);
});

test('posts of a length told come out of sticks, each on a base of its size; the posts of a deck are as long as it is high', () => {
  const plan = built(`level main\n  footprint 20' x 20'\nfoundation girder under main\n  posts 3 6x6, 22" long\n`);
  // 66 inches out of one stick of 8 feet.
  expect(plan.purchase('post 6x6').bought.value).toBe(1);
  expect(plan.purchase('post-base 6x6').bought.value).toBe(3);
  const deck = built(`deck porch\n  size 8' x 6'\n  high 30"\n  joists 2x8 at 16" oc\n  posts 4 4x4\n`);
  expect(deck.purchase('deck-post 4x4').lines[0]!.pieces).toMatchObject([{ count: { value: 4 } }]);
  expect(amount(deck.purchase('deck-post 4x4').lines[0]!.pieces![0]!.length, 'in')).toBe(30);
  expect(deck.purchase('joist-hanger 2x8').bought.value).toBe(7);
});

const opened = (level: string, door = '') => `assembly w for wall
  layer stud 2x6 at 16" oc, filled with r21-batt
window win 3' x 4'
door d-d 6' x 7', exterior${door}
level main
  footprint 20' x 20'
  height 8'
  walls w
${level}room r on main
  size 10' x 10'
  windows 2 win
  doors 1 d-d
`;

test('headers by the size of the level, and of the opening where it says its own', () => {
  const plan = built(opened('  headers 2-ply 2x10\n', ', header 3-ply 2x12'));
  // Two windows: two pieces each of 3 feet and 3 inches of bearing.
  expect(amount(plan.purchase('header 2x10').net, 'ft')).toBeCloseTo(4 * 3.25, 9);
  expect(amount(plan.purchase('header 2x12').net, 'ft')).toBeCloseTo(3 * 6.25, 9);
  expect(plan.line('wall-header-length', 'header 2x12').pieces).toMatchObject([{ count: { value: 3 } }]);
});

test('batts are as wide as the spacing asks', () => {
  expect(
    built(opened(''))
      .takeOff.purchases()
      .map(({ item }) => item),
  ).toContain('r21-batt 15"');
  expect(
    built(opened('').replace('16" oc', '24" oc'))
      .takeOff.purchases()
      .map(({ item }) => item),
  ).toContain('r21-batt 23"');
});

test('vents of a crawl space and an attic by the area that they leave free, and the ways in', () => {
  const plan = built(`level main
  footprint 30' x 40'
  height 8'
crawl under main
  vents 1/150
  access 24" x 30"
roof top over main
  shape gable 6:12
  vents 1/300, 50% high
  access 22" x 30"
`);
  // 1,200 sf over 150 is 8 sf, of 60 sq in each.
  expect(plan.purchase('crawl-vent').bought.value).toBe(Math.ceil((8 * 144) / 60));
  // 4 sf, half of it at the eaves by 9 sq in a foot, half at the ridge by 18; 5% more.
  expect(amount(plan.purchase('soffit-vent').needed, 'ft')).toBeCloseTo(((2 * 144) / 9) * 1.05, 6);
  expect(amount(plan.purchase('ridge-vent').needed, 'ft')).toBeCloseTo(((2 * 144) / 18) * 1.05, 6);
  expect(plan.purchase('crawl-door').item).toBe('crawl-door 24" x 30"');
  expect(plan.purchase('attic-hatch').item).toBe('attic-hatch 22" x 30"');
});
