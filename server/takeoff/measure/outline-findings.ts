// What is wrong with an outline, of a room or of a level's footprint: sides that do not close, cross, or run a little askew;
// pieces that lie apart; bays that fit on no wall.
import { FOOT } from '#kit/dimension';
import { type Finding, finding } from '#kit/finding';
import { outlineFromCorners } from '#kit/shapes/outline';
import { stepsToClose } from '#kit/shapes/walk';
import type { BayGiven } from '#model/bays';
import { bayMisfits } from '#model/facts/level';
import { roomBayMisfits } from '#model/facts/room';
import { floorShape, type OutlineGiven } from '#model/floor-shape';
import type { At, Level, Room } from '#model/model';
import { bayMisfit, outlineApart, outlineAskew, outlineCrosses, outlineEmpty, outlineOpen } from '../problems.ts';

/** Less than one in fifty out of square is a slip sooner than a slanted side. */
const SLIP = 50;

export function outlineFindings({ value, place }: At<OutlineGiven>, label: string): readonly Finding[] {
  if ('corners' in value) {
    const points = value.corners.map((corner) => ({ x: corner.value.left.value, y: corner.value.right.value }));
    if (floorShape(value) === undefined)
      return [finding(outlineFromCorners(points) === undefined ? outlineEmpty : outlineCrosses, place, label)];
    return points.flatMap((point, index) => {
      const next = points[(index + 1) % points.length]!;
      const [x, y] = [Math.abs(next.x - point.x), Math.abs(next.y - point.y)];
      const [off, length] = [Math.min(x, y), Math.max(x, y)];
      if (off === 0 || length <= FOOT || off * SLIP >= length) return [];
      const at = value.corners[index]!.place;
      return [finding(outlineAskew, at, label, index + 1, ((index + 1) % points.length) + 1, off)];
    });
  }
  if (floorShape(value) !== undefined) return [];
  if ('first' in value) return [finding(outlineApart, place, label)];
  const steps = value.map((side) => ({ direction: side.value.side, length: side.value.length.value }));
  const [short] = [...stepsToClose(steps)].sort((one, other) => other.length - one.length);
  if (short !== undefined) return [finding(outlineOpen, place, label, short.length, short.direction)];
  const encloses = new Set(steps.map(({ direction }) => direction)).size >= 3;
  return [finding(encloses ? outlineCrosses : outlineEmpty, place, label)];
}

export function levelOutlineFindings(level: Level): readonly Finding[] {
  const { footprint, bay } = level.given;
  const outline =
    footprint === undefined || 'left' in footprint.value
      ? []
      : outlineFindings({ ...footprint, value: footprint.value }, level.label);
  return [...outline, ...misfits(bay, bayMisfits(level), level.label)];
}

export function roomOutlineFindings(room: Room): readonly Finding[] {
  const { outline, bay } = room.given;
  return [
    ...(outline === undefined ? [] : outlineFindings(outline, room.label)),
    ...misfits(bay, roomBayMisfits(room), room.label),
  ];
}

function misfits(bays: readonly At<BayGiven>[], numbers: readonly number[], label: string): readonly Finding[] {
  return numbers.map((number) => finding(bayMisfit, bays[number]!.place, label, bays[number]!.value.side));
}
