// How goods are laid out where the plan does not choose it: as the book of layouts that is for them would have it.
import type { Material } from '#model/model';
import { isOf } from '#takeoff/conventions';
import type { View } from '../view.ts';

export type Book = Pick<Material['given'], 'laid-out' | 'trim' | 'pieced'>;

/** The row's own words, which are those of a book that the plan chose; else those of the first book for these goods. */
export function bookOf(row: Material, { plan: { model } }: View): Book {
  if (row.given['laid-out'] !== undefined) return row.given;
  const book = model.rows('convention').find(({ given }) => given['laid-out'] !== undefined && isOf(given, row.name));
  return book?.given ?? row.given;
}
