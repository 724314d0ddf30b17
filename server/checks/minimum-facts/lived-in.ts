// Whether somebody lives on a storey, by what its rooms are for: what is warm there is kept in by walls and floors about it.
import { NONE } from '#kit/differing';
import type { ElementOf, Foundation, Level, Room } from '#model/model';
import type { Model } from '#model/resolve';
import { insulationOf, isBare } from '#takeoff/insulation';
import { levelRooms, roomsOn } from '../level-rooms.ts';

type Crawl = ElementOf<'crawl'>;

const LIVED_IN: ReadonlySet<string> = new Set(['sleeping', 'living', 'cooking']);

export function isLivedIn(level: Level, model: Model): boolean {
  return roomsOn(level, model).some(isLived);
}

function isLived({ given }: Room): boolean {
  return given.use !== undefined && LIVED_IN.has(given.use.value);
}

/** The basement that a foundation stands about, if anything tells its rooms: the storey that it is under, or the one below that. */
function basementIn({ given }: Foundation, model: Model) {
  const above = given.under?.value;
  if (above === undefined) return undefined;
  const below = above.given.on?.value;
  return levelRooms(model).find(({ level }) => level.given.basement !== undefined && (level === above || level.slot === below));
}

/** Those by whose use one knows whether the storey inside a foundation, or over a crawl space, is lived on. */
export function roomsInside(thing: Foundation | Crawl, model: Model): readonly Room[] {
  if (thing.kind === 'foundation') return basementIn(thing, model)?.rooms ?? NONE;
  return thing.given.under === undefined ? NONE : roomsOn(thing.given.under.value, model);
}

/** A wall around a lived-in basement, of which neither it nor the storey says any insulation. */
export function isBareBasement(foundation: Foundation, model: Model): boolean {
  const { insulated, wall } = foundation.given;
  const basement = wall === undefined || insulated !== undefined ? undefined : basementIn(foundation, model);
  return basement !== undefined && basement.level.given.walls === undefined && basement.rooms.some(isLived);
}

/** A crawl space without vents under a floor that keeps no heat, and nothing on its walls either. */
export function isBareCrawl(crawl: Crawl, model: Model): boolean {
  const { insulated, vents, under } = crawl.given;
  const floor = under?.value.given.floor?.value;
  if (insulated !== undefined || vents !== undefined || floor === undefined) return false;
  const insulation = insulationOf(floor);
  return insulation !== undefined && isBare(insulation) && roomsInside(crawl, model).some(isLived);
}
