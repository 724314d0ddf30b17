// What of goods that are laid out lies on nothing that can be laid: it is bought by area beside them.
import { constant, form, measure, type Quantity } from '#kit/quantity';
import { area } from '#kit/shapes/outline';
import type { Face, Line } from './lines.ts';

export interface NotLaid {
  readonly line: Line;
  readonly net: Quantity;
  readonly needed: Quantity;
}

const share = form('what is not laid', 'all × share', (all = 0, part = 0) => all * part);

/** Of each line what its faces do not cover, openings counted with them; `laid` are the lines that were laid at all. */
export function notLaid(lines: readonly Line[], laid: ReadonlySet<Line>): readonly NotLaid[] {
  return lines.flatMap((line): readonly NotLaid[] => {
    const { net, needed } = line;
    if (needed === undefined) return [];
    if (!laid.has(line)) return [{ line, net, needed }];
    const covered = (line.faces?.() ?? []).reduce((sum, face) => sum + areaOf(face), 0);
    const part = net.value > 0 ? 1 - covered / net.value : 0;
    if (part <= SLIGHT) return [];
    const by = constant('share not laid', part, 'number');
    return [{ line, net: measure(net.dimension, share, net, by), needed: measure(needed.dimension, share, needed, by) }];
  });
}

function areaOf({ length, height, shapes }: Face): number {
  return shapes === undefined ? length.value * height.value : shapes.reduce((sum, shape) => sum + Math.abs(area(shape)), 0);
}

/** Roundings, and what a base or a joint takes up. */
const SLIGHT = 0.01;
