// The ordering chain of a house, one line a step, each waiting for the one above: every rule of order is held. And each two
// neighbours the other way round: where a rule stands between them it speaks up, or the links themselves make a ring.
import { describe, expect, test } from 'vitest';
import { checked } from '#tests/support/checked';
import chain from './ordering-chain.screed';

const lines = (chain as string).split('\n');
const nameOf = (line: string): string => /^ {2}(?:task|inspection|milestone) ([\w-]+)/.exec(line)?.[1] ?? '';

/** What is told beyond the reminders of the chain as it stands. */
const usual = new Set(checked({ 'chain.screed': chain }).told);

function swapped(above: string, below: string): readonly string[] {
  const at = lines.findIndex((line) => nameOf(line) === above);
  const next = lines.findIndex((line, place) => place > at && nameOf(line) !== '');
  expect(nameOf(lines[next] ?? '')).toBe(below);
  const changed = [...lines];
  [changed[at], changed[next]] = [lines[next]!, lines[at]!];
  return checked({ 'chain.screed': changed.join('\n') }).told.filter((line) => !usual.has(line));
}

test('as it stands nothing is out of order', () => {
  expect([...usual].filter((line) => !line.startsWith('note '))).toEqual([]);
  expect([...usual]).toEqual([
    'note money/price-missing chain',
    // A chain is no calendar: it names no holidays.
    'note dates/on-holiday chain',
    // It stands for all hazards that no step sees to.
    'note safety/lines-covered dig',
    'note missing/slab-curing slab',
    'note sequence/ducts-open-while-sanding tape',
    'note sequence/taping-in-the-cold tape',
  ]);
});

describe('the other way round', () => {
  test.each([
    ['survey', 'permit', 'note sequence/permit-before-survey permit'],
    ['permit', 'permit-issued', 'warning work/state-milestone permit-issued'],
    ['cover', 'locate', 'note sequence/material-before-cover joists'],
    ['erosion', 'clear', 'error sequence/strip-before-silt-fence clear'],
    ['dig', 'footing-forms', 'warning sequence/forms-before-hole footing-forms'],
    ['strip', 'patch', 'warning sequence/coat-before-patching coating'],
    ['patch', 'coating', 'error sequence/coat-before-patching coating'],
    ['sills', 'joists', 'error sequence/framing-before-sills joists'],
    ['floor-deck', 'fill', 'error sequence/backfill-before-braced fill'],
    ['walls-up', 'trusses', 'warning sequence/roof-before-walls trusses'],
    ['boots', 'roofing', 'warning sequence/roofing-before-vents roofing'],
    ['wrap', 'windows', 'warning sequence/windows-before-wrap windows'],
    ['outside-doors', 'dry', 'warning work/state-milestone dry'],
    ['wiring-rough', 'frame-check', 'error sequence/frame-check-before-roughs frame-check'],
    ['drains', 'pipes', 'note sequence/water-before-drains pipes'],
    ['seal', 'batts', 'error sequence/insulation-before-sealing batts'],
    ['prime', 'backer', 'warning sequence/tile-before-backer tile-set'],
    ['cabinets-in', 'measure', 'note sequence/tops-before-cabinets measure'],
    ['floors', 'base', 'note sequence/base-before-floor base'],
    ['paint', 'plumbing-trim', 'warning sequence/fixtures-before-finish plumbing-trim'],
    ['flashing', 'siding', 'warning sequence/siding-before-flashing siding'],
    ['outside-paint', 'gutters', 'note sequence/gutters-before-roofing gutters'],
    ['rough-grading', 'grading', 'note sequence/grade-before-trenches grading'],
  ])('%s and %s', (above, below, found) => expect(swapped(above, below)).toContain(found));

  // What an inspection holds, and what names its own wait, is a link of the plan: the other way round it is a ring.
  test.each([
    ['footing-forms', 'footing-check'],
    ['footing-check', 'footings'],
    ['footings', 'wall-forms'],
    ['wall-check', 'walls-poured'],
    ['walls-poured', 'strip'],
    ['drain', 'drain-check'],
    ['joists', 'floor-check'],
    ['floor-check', 'floor-deck'],
    ['underslab', 'underground-plumbing-check'],
    ['underground-plumbing-check', 'slab-base'],
    ['slab-base', 'slab-check'],
    ['slab-check', 'slab'],
    ['roof-deck', 'nailing-check'],
    ['nailing-check', 'felt'],
    ['batts', 'insulation-check'],
    ['insulation-check', 'board'],
    ['board', 'board-check'],
    ['board-check', 'tape'],
    ['tape', 'prime'],
    ['tile-set', 'grout'],
    ['wiring-final', 'building-final'],
  ])('%s and %s go round in a ring, and that alone is told', (above, below) => {
    expect(swapped(above, below)).toEqual([`error schedule/loop ${below}`]);
  });

  test.each([
    ['clear', 'stake-out'],
    ['posts', 'sills'],
    ['trusses', 'partitions'],
    ['ducts', 'drains'],
    ['wiring-trim', 'heat'],
    ['eaves', 'outside-paint'],
    ['plumbing-final', 'mechanical-final'],
  ])('%s and %s have no rule between them', (above, below) => expect(swapped(above, below)).toEqual([]));
});
