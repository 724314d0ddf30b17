// What is wrong with an outline, of a room or of a level's footprint: sides that do not close, cross, or run askew; pieces
// that lie apart.
import { type Finding, finding } from '#kit/finding';
import { outlineFromCorners, stepsToClose } from '#kit/shapes/outline';
import { floorShape, type OutlineGiven } from '#model/floor-shape';
import type { At, Room } from '#model/model';
import { outlineApart, outlineAskew, outlineCrosses, outlineEmpty, outlineOpen } from '../problems.ts';

export function outlineFindings({ value, place }: At<OutlineGiven>, label: string): readonly Finding[] {
  if (floorShape(value) !== undefined) return [];
  if ('first' in value) return [finding(outlineApart, place, label)];
  if ('corners' in value) {
    const points = value.corners.map((corner) => ({ x: corner.value.left.value, y: corner.value.right.value }));
    const askew = points.findIndex((point, index) => {
      const next = points[(index + 1) % points.length]!;
      return point.x !== next.x && point.y !== next.y;
    });
    if (askew >= 0)
      return [finding(outlineAskew, value.corners[askew]!.place, label, askew + 1, ((askew + 1) % points.length) + 1)];
    return [finding(outlineFromCorners(points) === undefined ? outlineEmpty : outlineCrosses, place, label)];
  }
  const steps = value.map((side) => ({ direction: side.value.side, length: side.value.length.value }));
  const [short] = stepsToClose(steps);
  if (short !== undefined) return [finding(outlineOpen, place, label, short.length, short.direction)];
  const encloses =
    steps.length >= 4 &&
    steps.some(({ direction }) => direction === 'east') &&
    steps.some(({ direction }) => direction === 'north');
  return [finding(encloses ? outlineCrosses : outlineEmpty, place, label)];
}

export function roomOutlineFindings({ given, label }: Room): readonly Finding[] {
  return given.outline === undefined ? [] : outlineFindings(given.outline, label);
}
