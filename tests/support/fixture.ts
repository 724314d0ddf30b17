// Tests written as texts: several files in one string, a cursor or a stretch marked in it, and expected findings as
// carets under the line they are about. The marks are taken out; what is left is what an editor would hold.
//
//   #- plan.screed                                   begins a file (without one, all is plan.screed)
//   room ba<|>th                                     the cursor; <| … |> marks a stretch
//        ^^^^ error rooms/no-door: No door …         severity, code and message may each be left out; a # may stand first

export interface Fixture {
  readonly files: readonly { readonly path: string; readonly text: string }[];
  readonly cursor?: Spot;
  readonly stretch?: { readonly from: Spot; readonly to: Spot };
  readonly marks: readonly Mark[];
}

/** Lines and columns count from 0, in UTF-16 units, in the text without marks. */
export interface Spot {
  readonly file: string;
  readonly line: number;
  readonly column: number;
}

export interface Mark {
  readonly file: string;
  readonly line: number;
  readonly from: number;
  readonly to: number;
  readonly severity?: 'error' | 'warning' | 'note';
  readonly code?: string;
  readonly message?: string;
}

/** Reads a fixture. Indentation common to all lines goes, so that it may stand indented within a test. */
export function readFixture(source: string): Fixture {
  const files: { path: string; lines: string[] }[] = [];
  const marks: Mark[] = [];
  const spots: { kind: string; spot: Spot }[] = [];
  // How the last line looked before its marks went, to line up carets that stand under it.
  let seen: readonly { at: number; length: number }[] = [];
  for (const raw of dedent(source).split('\n')) {
    const path = /^#- *(\S+)\s*$/.exec(raw)?.[1];
    if (path !== undefined || files.length === 0) files.push({ path: path ?? 'plan.screed', lines: [] });
    if (path !== undefined) continue;
    const file = files.at(-1)!;
    const mark = readMark(raw);
    if (mark !== undefined) {
      const line = file.lines.length - 1;
      marks.push({ ...mark, file: file.path, line, from: withoutMarks(seen, mark.from), to: withoutMarks(seen, mark.to) });
      continue;
    }
    const cut: { at: number; length: number }[] = [];
    const clean = raw.replace(/<\|>|<\||\|>/g, (kind, at: number) => {
      spots.push({ kind, spot: { file: file.path, line: file.lines.length, column: withoutMarks(cut, at) } });
      cut.push({ at, length: kind.length });
      return '';
    });
    file.lines.push(clean);
    seen = cut;
  }
  const find = (kind: string) => spots.find((each) => each.kind === kind)?.spot;
  const [cursor, from, to] = [find('<|>'), find('<|'), find('|>')];
  return {
    files: files.map(({ path, lines }) => ({ path, text: lines.join('\n') })),
    marks,
    ...(cursor === undefined ? {} : { cursor }),
    ...(from === undefined || to === undefined ? {} : { stretch: { from, to } }),
  };
}

/** The marks of a text that keeps them as comments, as the sample plans do: `#  ^^^^ error area/name`. */
export function readMarks(file: string, text: string): readonly Mark[] {
  let about = 0;
  return text.split('\n').flatMap((line, index) => {
    const mark = readMark(line);
    if (mark === undefined) about = index;
    return mark === undefined ? [] : [{ ...mark, file, line: about }];
  });
}

/** Takes away the first line where it is empty, and the blanks that every line begins with. */
export function dedent(source: string): string {
  const lines = source
    .replace(/^[ \t]*\n/, '')
    .replace(/\n[ \t]*$/, '\n')
    .split('\n');
  const indents = lines.filter((line) => line.trim() !== '').map((line) => /^ */.exec(line)![0].length);
  const common = Math.min(...indents, Number.MAX_SAFE_INTEGER);
  return lines.map((line) => line.slice(Math.min(common, line.length))).join('\n');
}

const MARK =
  /^#?[ \t]*(\^+)(?:[ \t]+(error|warning|note)\b)?(?:[ \t]+([a-z][a-z0-9-]*\/[a-z0-9/.-]*[a-z0-9]))?[ \t]*(?::[ \t]*(.*))?$/;

function readMark(line: string): Omit<Mark, 'file' | 'line'> | undefined {
  const match = MARK.exec(line.trimEnd());
  if (match === null) return undefined;
  const from = line.indexOf('^');
  const [, carets, severity, code, message] = match;
  return {
    from,
    to: from + carets!.length,
    ...(severity === undefined ? {} : { severity: severity as 'error' | 'warning' | 'note' }),
    ...(code === undefined ? {} : { code }),
    ...(message === undefined || message === '' ? {} : { message }),
  };
}

function withoutMarks(cut: readonly { at: number; length: number }[], column: number): number {
  return cut.reduce((left, { at, length }) => (at < column ? left - Math.min(length, column - at) : left), column);
}
