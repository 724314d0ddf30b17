// Panels along the walls of each level, numbered wall by wall from the left end seen from inside: how wide, where they begin,
// what is cut from them.
import { levelShape } from '#model/facts/level';
import type { ElementOf } from '#model/model';
import { thicknessOf } from '#takeoff/goods';
import { isPanel, layersOf } from '#takeoff/measure/layers';
import { type PanelWall, panelWalls, wallOpenings } from '#takeoff/measure/panel-layout';
import { type ListedReason, saying } from '../listed-reason.ts';
import { counted, left, listed, right, type Table, withoutEmpty } from '../table.ts';
import { labelOf } from '../takeoff-lines.ts';
import { type View, write } from '../view.ts';

type Panels = ElementOf<'panels'>;

export function panelsTable(view: View): Table | undefined {
  const rows = view.plan.model
    .list('panels')
    .flatMap((panels) =>
      wallsOf(panels, view).flatMap(({ level, walls }): Table['rows'] => [
        `${level}: ${sizesText(walls, view)}`,
        ...walls.flatMap((wall) => [
          ...wall.panels.map(({ name, from, width, openings }): readonly string[] => [
            `  ${name}`,
            lengthText(width, view),
            lengthText(from, view),
            listed(openings),
          ]),
          ...wall.loose.map((label): readonly string[] => [`  ${wall.label}`, '', '', `${label}, nobody says where`]),
        ]),
      ]),
    );
  if (rows.length === 0) return undefined;
  return withoutEmpty({
    heading: [
      'Panels along each wall, from its left end seen from inside; a joint within an opening has no spline.',
      'The works’ drawings decide: chases, lift points, headers and posts are theirs.',
    ],
    columns: [left('Panel'), right('Width'), right('From the left'), left('Cut from it')],
    rows,
    totals: [],
    remarks: [],
  });
}

/** The walls of panels by their level. */
export function panelLevels(view: View): ReturnType<typeof wallsOf> {
  return view.plan.model.list('panels').flatMap((panels) => wallsOf(panels, view));
}

/** '22 panels: …' over all its levels; undefined where nobody says how wide they are. */
export function panelsWhy(panels: Panels, view: View): string | undefined {
  const walls = wallsOf(panels, view).flatMap((each) => each.walls);
  return walls.length === 0 ? undefined : sizesText(walls, view);
}

/** For `explain`: each wall, and below it its panels. */
export function panelReasons(panels: Panels, view: View): readonly ListedReason[] {
  return wallsOf(panels, view).flatMap(({ walls }) =>
    walls.map((wall) =>
      saying(
        `${wall.label} wall`,
        `${lengthText(wall.length, view)}: ${sizesText([wall], view)}`,
        wall.panels.map(({ name, from, width, openings }) =>
          saying(
            name,
            `${lengthText(width, view)} from ${lengthText(from, view)}${openings.length === 0 ? '' : `, with ${listed(openings)}`}`,
          ),
        ),
      ),
    ),
  );
}

function wallsOf({ given }: Panels, view: View): readonly { readonly level: string; readonly walls: readonly PanelWall[] }[] {
  const { model } = view.plan;
  const width = given.width?.value;
  if (width === undefined) return [];
  return (given.for?.value ?? []).flatMap(({ value: level }) => {
    const shape = levelShape(level);
    const main = level.given.walls === undefined ? undefined : layersOf(level.given.walls.value).main;
    if (shape === undefined || main === undefined || !isPanel(main)) return [];
    const rooms = model.list('room').filter((room) => room.given.on?.value.slot === level.slot);
    return [{ level: labelOf(level.slot, view), walls: panelWalls(shape, width, thicknessOf(main.value), wallOpenings(rooms)) }];
  });
}

/** All in one spelling, however they were given. */
function lengthText({ value }: { readonly value: number }, view: View): string {
  return write({ value, dimension: 'length' }, view.style);
}

/** '22 panels: 20 of 1,200 mm, 2 of 870 mm'. */
function sizesText(walls: readonly PanelWall[], view: View): string {
  const counts = new Map<string, number>();
  let all = 0;
  for (const { panels } of walls)
    for (const { width } of panels) {
      const text = lengthText(width, view);
      counts.set(text, (counts.get(text) ?? 0) + 1);
      all += 1;
    }
  return `${counted(all, 'panel')}: ${[...counts].map(([width, count]) => `${count} of ${width}`).join(', ')}`;
}
