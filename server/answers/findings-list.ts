// A finding as it is listed: code, severity, message, place, source, and what would answer them.
import { findingKey } from '#checks/finding-key';
import { type Finding, type Fix, messageOf, type Severity } from '#kit/finding';
import { type Position, positionOf } from './position.ts';
import type { View } from './view.ts';

export interface ListedFinding {
  readonly code: string;
  readonly severity: Severity;
  readonly message: string;
  readonly file: string;
  readonly start: Point;
  readonly end: Point;
  readonly related: readonly Related[];
  /** The declaration it stands at, and the name in it that it is about: what it is called whatever its line. */
  readonly thing: string;
  readonly word?: string;
  readonly source?: string;
  readonly fix?: ListedFix;
}

/** Counted from 1, columns in UTF-16 units. */
export interface Point {
  readonly line: number;
  readonly column: number;
}

export interface Related {
  readonly message: string;
  readonly file: string;
  readonly start: Point;
  readonly end: Point;
}

/** The first way to answer it: what it does in words, where, and the text it writes there. */
export interface ListedFix {
  readonly title: string;
  readonly kind: Fix['kind'];
  readonly file: string;
  readonly start: Point;
  readonly end: Point;
  readonly text: string;
}

/** In the order of the plan. */
export function listFindings(view: View): readonly ListedFinding[] {
  return view.plan.findings.map((found) => listedFinding(found, view));
}

export function listedFinding(found: Finding, view: View): ListedFinding {
  const fix = found.fixes?.[0];
  const { thing, word } = findingKey(found, view.plan.model);
  return {
    code: found.code,
    severity: found.severity,
    message: messageOf(found),
    ...stretch(positionOf(found.place, view)),
    related: (found.related ?? []).map(({ place, note }) => ({ message: note, ...stretch(positionOf(place, view)) })),
    thing,
    ...(word === undefined ? {} : { word }),
    ...(found.source === undefined ? {} : { source: found.source }),
    ...(fix === undefined
      ? {}
      : { fix: { title: fix.title, kind: fix.kind, ...stretch(positionOf(fix.place, view)), text: fix.text } }),
  };
}

function stretch({ file, line, column, endColumn }: Position): { file: string; start: Point; end: Point } {
  return { file, start: { line, column }, end: { line, column: endColumn } };
}
