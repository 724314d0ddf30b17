// A crew that two houses ask for on the same days: told in each house while both are looked at, whatever was opened first.
import { describe, expect, test } from 'vitest';
import { memoryFiles } from '#host/memory-files';
import { messageOf } from '#kit/finding';
import { type Workspace, workspace } from '#server/workspace';

const CREWS = 'trade framing "Framing" crew of 3\ntrade roofing crew of 2\n';
const ONE = `plan one "House one"
  start 2027-05-03
include "../crews.screed"
task walls takes 4d by framing
task trusses takes 2d by framing after walls
task shingles takes 3d by roofing after trusses, to the end
`;
const TWO = `plan two "House two"
  start 2027-05-05
include "../crews.screed"
task frame takes 3d by framing, to the end
`;
const one = 'street/one/plan.screed';
const two = 'street/two/plan.screed';

function street(texts: Record<string, string> = {}): Workspace {
  const all: Record<string, string> = { [one]: ONE, [two]: TWO, 'street/crews.screed': CREWS, ...texts };
  const places = workspace(memoryFiles(all), 'library');
  places.setFolders(['street']);
  for (const path of Object.keys(all).filter((path) => path.endsWith('plan.screed'))) places.open(path, 1, all[path]!);
  return places;
}
function told(places: Workspace, root: string): readonly string[] {
  const plan = places.plans().find((each) => each.root === root);
  return (plan?.findings ?? []).filter(({ code }) => code === 'work/two-houses').map(messageOf);
}

describe('one crew, two houses', () => {
  test('each hears of the other, with the days', () => {
    // House one: walls Mon 3 to Thu 6 May, trusses Fri 7 and Mon 10. House two: frame Wed 5 to Fri 7 May.
    const places = street();
    expect(told(places, one)).toEqual([
      'Framing from 5 May to 6 May: "walls" here and "frame" of House two ask for its one crew on the same 2 days. One of the houses waits, and its dates do not say so. Move one ("not before"), or find another crew and say how many there are ("crews 2").',
      'Framing on 7 May: "trusses" here and "frame" of House two ask for its one crew on the same day. One of the houses waits, and its dates do not say so. Move one ("not before"), or find another crew and say how many there are ("crews 2").',
    ]);
    expect(told(places, two)[0]).toContain('from 5 May to 7 May: "frame" here and "walls", "trusses" of House one');
  });

  test('alone, nobody knows', () => {
    const places = street();
    places.close(two);
    expect(told(places, one)).toEqual([]);
  });

  test('a second crew, other days, or people of their own', () => {
    expect(told(street({ 'street/crews.screed': CREWS.replace('crew of 3', 'crew of 3 crews 2') }), one)).toEqual([]);
    expect(told(street({ [two]: TWO.replace('2027-05-05', '2027-05-11') }), one)).toEqual([]);
    const own = TWO.replace('include "../crews.screed"', 'trade framing "Framing" crew of 3');
    expect(told(street({ [two]: own }), one)).toEqual([]);
  });

  test('what is done asks for nobody, and what is left only from the diary’s day on', () => {
    const diary = 'progress 2027-05-06\n  walls finished 2027-05-06\n';
    expect(told(street({ [one]: ONE + diary }), one).map((each) => each.slice(0, 24))).toEqual(['Framing on 7 May: "truss']);
  });

  test('it can be accepted in either', () => {
    const accepted = TWO.replace('to the end\n', 'to the end\n  accept work/two-houses "Half the crew goes over"\n');
    const places = street({ [two]: accepted });
    expect(told(places, two)).toEqual([]);
    expect(told(places, one)).toHaveLength(2);
  });
});

test('three houses, two crews: only days on which three ask', () => {
  const three = 'street/three/plan.screed';
  const places = street({
    'street/crews.screed': CREWS.replace('crew of 3', 'crew of 3 crews 2'),
    [three]: TWO.replaceAll('two', 'three').replace('2027-05-05', '2027-05-06').replace('3d', '1d'),
  });
  expect(told(places, one).map((each) => each.slice(0, 20))).toEqual(['Framing on 6 May: "w']);
  expect(told(places, three)[0]).toContain('"frame" of House two');
  expect(told(places, three)[0]).toContain('more than its 2 crews');
});

test('typing in one house is heard in the other, and comes to what a fresh look says', () => {
  const places = street();
  places.plans();
  const edits = ['2027-05-11', '2027-05-04', '2027-05-07', '2027-05-05'];
  for (const day of edits) {
    const text = TWO.replace('2027-05-05', day);
    places.change(two, 2, [{ text }]);
    expect(told(places, one)).toEqual(told(street({ [two]: text }), one));
    expect(told(places, two)).toEqual(told(street({ [two]: text }), two));
  }
});

test('an edit that moves no shared day leaves the neighbour’s plan as it is', () => {
  const places = street();
  const before = places.plans().find(({ root }) => root === one);
  places.change(two, 2, [{ text: `${TWO}room shed\n` }]);
  expect(places.plans().find(({ root }) => root === one)).toBe(before);
});

describe('machines and firms are shared like trades', () => {
  // House one: pipes Mon 3 to Thu 6 May. House two: pipes Wed 5 to Fri 7 May. Each trade has crews for both.
  const house = (name: string, start: string, length: string): string =>
    `plan ${name} "House ${name}"\n  start ${start}\ninclude "../crews.screed"\ntask pipes takes ${length} by plumbing, needs lift\n`;
  const places = (crews: string): Workspace =>
    street({ [one]: house('one', '2027-05-03', '4d'), [two]: house('two', '2027-05-05', '3d'), 'street/crews.screed': crews });
  const PLUMBING = 'trade plumbing "Pipes" crew of 2, crews 2\n';

  test('one lift', () => {
    expect(told(places(`${PLUMBING}machine lift "Lift"\n`), one)).toEqual([
      'Lift from 5 May to 6 May: "pipes" here and "pipes" of House two ask for the one there is on the same 2 days. One of the houses waits, and its dates do not say so. Move one ("not before"), or hire another and say how many there are ("2 of them").',
    ]);
    expect(told(places(`${PLUMBING}machine lift "Lift", 2 of them\n`), one)).toEqual([]);
  });

  test('a firm with one crew for all that it does', () => {
    const firm = 'machine lift "Lift", 2 of them\nfirm ruiz "Ruiz" does plumbing\n  crews 1\n';
    expect(told(places(PLUMBING + firm), two)[0]).toContain('Ruiz from 5 May to 6 May: "pipes" here and "pipes" of House one');
    // Where its trade has one crew, too, the days are told once.
    expect(told(places(PLUMBING.replace(', crews 2', '') + firm), two)).toHaveLength(1);
  });
});
