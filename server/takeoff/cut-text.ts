// How a cut is said: 12'-0" cut to 2 x 5'-0", 1'-6".
import { formatQuantity, type System } from '#kit/units';

export function cutText(holds: number, pieces: readonly number[], system: System): string {
  return `${lengthText(holds, system)} ${pieces.length === 0 ? 'for waste' : `cut to ${piecesText(pieces, system)}`}`;
}

export function lengthText(value: number, system: System): string {
  return formatQuantity({ value: Math.round(value), dimension: 'length' }, system);
}

/** '2 x 7'-6", 1'-0"'. */
export function piecesText(pieces: readonly number[], system: System): string {
  return [...new Set(pieces)]
    .map((length) => {
      const count = pieces.filter((each) => each === length).length;
      return `${count === 1 ? '' : `${count} x `}${lengthText(length, system)}`;
    })
    .join(', ');
}
