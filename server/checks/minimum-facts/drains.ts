// Units by which drains are sized, as fixtures tell them: of a room on its branch, of the house on its way out.
import type { Quantity } from '#kit/quantity';
import type { Plan, Room } from '#model/model';
import { type FactTable, number } from './tables.ts';

interface Load {
  readonly units: number;
  /** No fixture that tells its units is none. */
  readonly told: boolean;
}

function loadOf(rooms: readonly Room[]): Load {
  let units = 0;
  let told = false;
  for (const { given } of rooms)
    for (const line of given.fixtures)
      for (const { value } of line.value) {
        const each = value.type.of?.kind === 'fixture' ? value.type.of.given.drains?.value : undefined;
        if (each === undefined) continue;
        told = true;
        units += each.value * (typeof value.count === 'number' ? value.count : 1);
      }
  return { units, told };
}

function unitsOf(rooms: readonly Room[]): Quantity | undefined {
  const { units, told } = loadOf(rooms);
  return told ? number('drainage fixture units', units) : undefined;
}

export const drainsOfRoom: FactTable<Room> = { own: { 'drain-units': (room) => unitsOf([room]) } };

export const drainsOfPlan: FactTable<Plan> = { around: { 'drain-units': (_, model) => unitsOf(model.list('room')) } };
