// The dates of a small plan, for tests: each step's days by name, and why it begins when it does.

import { whyStep } from '#answers/explain-step';
import { viewOf } from '#answers/view';
import { dayOfFinish, dayOfStart, isoDate } from '#kit/dates';
import { analyse, emptyMemory, type Memory, type Plan } from '#server/pipeline';
import { builtIn } from './built-in.ts';

const library = builtIn();

export function planOf(text: string, memory: Memory = emptyMemory()): Plan {
  return analyse({ root: 'plan.screed', texts: { 'plan.screed': text }, library }, memory);
}

/** 'MM-DD' where it is done on the day it begins, else 'MM-DD MM-DD'; of a moment, the day it falls on. */
export function daysOf({ timeline }: Plan): Record<string, string> {
  const { steps, crews } = timeline;
  return Object.fromEntries(
    steps.list.map((step, at) => {
      const [start, finish] = [crews.start[at]!, crews.finish[at]!];
      const [from, to] = [dayOfStart(start), start === finish ? dayOfStart(finish) : dayOfFinish(finish)].map((day) =>
        isoDate(day).slice(5),
      );
      return [step.name, from === to ? from! : `${from} ${to}`];
    }),
  );
}

/** Working days to spare, with crews as limits. */
export function spareOf({ timeline }: Plan, name: string): number {
  return timeline.floats.totalFloat[timeline.steps.byName.get(name)!]! / timeline.minutesPerDay;
}

/** The sentence that hover and `explain` begin with. */
export function whyOf(plan: Plan, name: string): string {
  return whyStep(plan.timeline.steps.byName.get(name)!, viewOf(plan));
}
