// Dates between which a step must lie by its own words: not before, on the day it is to start, between two days, by its deadline.
import { DAY_MINUTES } from '#kit/dates';
import type { Slot } from '#kit/place';
import type { Step } from '#model/model';
import { type Calendar, nextWork } from './calendar.ts';
import type { Steps } from './steps.ts';

/** Moments; infinite where nothing is said. */
export interface Window {
  readonly notBefore: number;
  /** It must begin by then. */
  readonly startBy: number;
  /** It must be finished by then. */
  readonly deadline: number;
}

export function windowOf(step: Step, own: Calendar): Window {
  const { given } = step;
  let notBefore = given['not before'] === undefined ? Number.NEGATIVE_INFINITY : given['not before'].value * DAY_MINUTES;
  let deadline = given.deadline === undefined ? Number.POSITIVE_INFINITY : (given.deadline.value + 1) * DAY_MINUTES;
  let startBy = Number.POSITIVE_INFINITY;
  const between = datesBetween(step);
  if (between !== undefined) {
    notBefore = Math.max(notBefore, between.first * DAY_MINUTES);
    deadline = Math.min(deadline, (between.last + 1) * DAY_MINUTES);
  }
  const day = mustStart(step);
  if (day !== undefined) {
    notBefore = Math.max(notBefore, day * DAY_MINUTES);
    startBy = opening(own, day);
  }
  return { notBefore, startBy, deadline };
}

export function mustStart(step: Step): number | undefined {
  return step.kind === 'task' || step.kind === 'inspection' ? step.given['must start']?.value : undefined;
}

/** The dates of `between`, where it names a year. */
export function datesBetween(step: Step): { readonly first: number; readonly last: number } | undefined {
  if (step.kind !== 'task' && step.kind !== 'inspection') return undefined;
  const window = step.given.between?.value;
  if (window === undefined || typeof window.from !== 'number' || typeof window.to !== 'number') return undefined;
  return { first: window.from, last: window.to };
}

/** When a day's work begins; the day's own midnight where nobody works on it. */
function opening(own: Calendar, day: number): number {
  const first = nextWork(own, day * DAY_MINUTES);
  return first < (day + 1) * DAY_MINUTES ? first : day * DAY_MINUTES;
}

/** What a step stands from and to, where it takes its length from others; a phase means its first step and all its steps. */
export function standsFrom(
  step: Step,
  steps: Steps,
): { readonly from: readonly number[]; readonly to: readonly number[] } | undefined {
  const stands = step.kind === 'task' ? step.given.stands?.value : undefined;
  if (stands === undefined) return undefined;
  return { from: numbersOf(stands.from, steps).slice(0, 1), to: numbersOf(stands.to, steps) };
}

function numbersOf(slot: Slot, steps: Steps): readonly number[] {
  if (slot.kind === 'phase') return steps.within.get(slot) ?? [];
  const number = steps.index.get(slot);
  return number === undefined ? [] : [number];
}

export function isStanding(step: Step): boolean {
  return step.kind === 'task' && step.given.stands !== undefined;
}
