// Units by which drains are sized, as fixtures tell them: of a room on its branch, of the house on its way out.
import { form, measure, type Quantity, total } from '#kit/quantity';
import type { Plan, Room } from '#model/model';
import { type FactTable, number } from './tables.ts';

const unitsFor = form('units', 'count × units of one', (count = 0, each = 0) => count * each);

/** Of each fixture that tells its units; none where none does. */
function loadsOf(rooms: readonly Room[]): readonly Quantity<'number'>[] {
  return rooms.flatMap(({ given }) =>
    given.fixtures.flatMap((line) =>
      line.value.flatMap(({ value: { type, count } }) => {
        const each = type.of?.kind === 'fixture' ? type.of.given.drains?.value : undefined;
        if (each === undefined) return [];
        return [measure<'number'>('number', unitsFor, number(type.name, typeof count === 'number' ? count : 1), each)];
      }),
    ),
  );
}

function unitsOf(rooms: readonly Room[]): Quantity | undefined {
  const loads = loadsOf(rooms);
  return loads.length === 0 ? undefined : total('drainage fixture units', 'number', loads);
}

export const drainsOfRoom: FactTable<Room> = { own: { 'drain-units': (room) => unitsOf([room]) } };

export const drainsOfPlan: FactTable<Plan> = { around: { 'drain-units': (_, model) => unitsOf(model.list('room')) } };
