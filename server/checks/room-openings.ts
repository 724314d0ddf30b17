// The windows, doors and cased openings of a room in one list: how many, how wide and high, in which wall, to which room.
import type { Place, Slot } from '#kit/place';
import type { Heading } from '#kit/shapes/walk';
import type { Opening, Room } from '#model/model';
import { keptFor } from './kept.ts';

export type SideWord = Heading;

export interface RoomOpening {
  readonly kind: 'window' | 'door' | 'cased';
  readonly name: string;
  readonly count: number;
  /** Rough where the plan gives it, else nominal; in base units, as every length here. */
  readonly width: number;
  readonly height: number;
  /** Above the floor; 0 for doors. */
  readonly sill: number;
  readonly side: SideWord | undefined;
  /** From the left corner, seen from inside. */
  readonly at: readonly number[];
  readonly to: Slot | undefined;
  readonly exterior: boolean;
  readonly place: Place;
}

export const roomOpenings = keptFor(({ given }: Room): readonly RoomOpening[] => {
  const found: RoomOpening[] = [];
  for (const line of [...given.windows, ...given.doors]) {
    for (const { value, place } of line.value) {
      const { type, count, side, at, to } = value;
      const size = sizeOf(type);
      if (size === undefined) continue;
      found.push({
        kind: type.kind,
        name: type.name,
        count: count ?? 1,
        width: size.left.value,
        height: size.right.value,
        sill: type.kind === 'window' ? (type.given.sill?.value.value ?? 0) : 0,
        side,
        at: (at ?? []).map((each) => each.value.value),
        to,
        exterior: type.kind === 'window' || type.given.exterior !== undefined,
        place,
      });
    }
  }
  for (const line of given.cased) {
    for (const { value, place } of line.value) {
      found.push({
        kind: 'cased',
        name: 'cased opening',
        count: 1,
        width: value.size.left.value,
        height: value.size.right.value,
        sill: 0,
        side: undefined,
        at: [],
        to: value.to,
        exterior: false,
        place,
      });
    }
  }
  return found;
});

function sizeOf(type: Opening) {
  return type.given.rough?.value ?? type.takes;
}
