// What can be done about the findings of a line: the fixes they carry, and accepting them with a reason. Found by the
// lines asked about, from the plan as it is now; what the editor still shows may be older.
import type { CodeAction, Diagnostic, Range, WorkspaceEdit } from 'vscode-languageserver-types';
import { editOf, type FileEdit, lineBelow } from '#answers/fix-edit';
import { isShown, profileOf } from '#answers/profiles';
import type { Finding } from '#kit/finding';
import type { Plan } from '#server/pipeline';
import { diagnosticsOfFindings } from './diagnostics.ts';
import type { Feature } from './features.ts';
import { type OrderFix, orderFixes } from './order-fixes.ts';
import { rangeOf } from './places.ts';
import type { Addresses, View } from './view.ts';

const FIX_ALL = 'source.fixAll';

export const codeActions: Feature = {
  method: 'textDocument/codeAction',
  offers: (client) =>
    client.codeActionRecords ? { codeActionProvider: { codeActionKinds: ['quickfix', FIX_ALL], resolveProvider: false } } : {},
  answer: (view, { range, context }: Asked) => {
    const wanted = (kind: string): boolean =>
      context?.only === undefined || context.only.some((only) => kind === only || kind.startsWith(`${only}.`));
    return [
      ...(wanted('quickfix') ? quickFixes(view, range) : []),
      ...(wanted(FIX_ALL) && context?.only !== undefined ? fixAll(view) : []),
    ];
  },
};

interface Asked {
  readonly range: Range;
  readonly context?: { readonly only?: readonly string[] };
}

function quickFixes(view: View, range: Range): readonly CodeAction[] {
  const { file, plan } = view;
  const reader = profileOf(plan, view.profile);
  const shown = [...plan.findings.filter((found) => isShown(found, reader)), ...plan.known.map(({ finding }) => finding)];
  const here = shown.filter(({ place }) => place.slot.file === file.path && touches(rangeOf(place, plan.model), range));
  const actions = here.map((found) => {
    const [diagnostic] = diagnosticsOfFindings([found], plan, view.client, view.addresses);
    const about = diagnostic === undefined ? {} : { diagnostics: [diagnostic] };
    const fixes = fixesOf(found, plan).map(
      ({ title, edits }, at): CodeAction => ({
        title,
        kind: 'quickfix',
        ...about,
        edit: workspaceEdit(edits, view),
        ...(at === 0 ? { isPreferred: true } : {}),
      }),
    );
    return { fixes, accepting: acceptance(found, plan, view, about) };
  });
  // What mends the plan comes before what answers it.
  return [...actions.flatMap(({ fixes }) => fixes), ...actions.flatMap(({ accepting }) => accepting)];
}

/** The best first: of an order that nothing holds, those that were tried out; else those that the finding carries. */
function fixesOf(found: Finding, plan: Plan): readonly OrderFix[] {
  return (
    orderFixes(found, plan) ??
    (found.fixes ?? []).flatMap((fix) => {
      const edit = editOf(fix, plan);
      return edit === undefined ? [] : [{ title: fix.title, edits: [edit] }];
    })
  );
}

/** Findings about what cannot be read, or about acceptances themselves, are mended, not accepted. */
const NOT_ACCEPTED = /^(?:syntax|words|names|units|accept|screed)\//;

function acceptance(
  found: Finding,
  plan: Plan,
  view: View,
  about: { readonly diagnostics?: Diagnostic[] },
): readonly CodeAction[] {
  if (NOT_ACCEPTED.test(found.code)) return [];
  const { slot } = found.place;
  const declared = plan.model.names.bySlot.get(slot);
  if (declared === undefined) return [];
  // What stands below a phase are steps; its own lines come first.
  const where = declared.declaration.kind.declares === undefined ? 'last' : 'first';
  const edit = lineBelow(slot, `accept ${found.code} "say why"`, plan, where);
  if (edit === undefined) return [];
  return [{ title: `Accept ${found.code} here, with a reason`, kind: 'quickfix', ...about, edit: workspaceEdit([edit], view) }];
}

/** All spellings that can be written only one other way. */
function fixAll(view: View): readonly CodeAction[] {
  const { file, plan } = view;
  const edits = plan.findings.flatMap(({ place, fixes = [] }): FileEdit[] => {
    const [fix] = fixes;
    if (place.slot.file !== file.path || fixes.length !== 1 || fix?.kind !== 'replace') return [];
    const edit = editOf(fix, plan);
    return edit === undefined ? [] : [edit];
  });
  const apart = withoutOverlaps(edits.filter(({ path }) => path === file.path));
  if (apart.length === 0) return [];
  return [{ title: 'Mend every spelling that can be mended', kind: FIX_ALL, edit: workspaceEdit(apart, view) }];
}

function withoutOverlaps(edits: readonly FileEdit[]): readonly FileEdit[] {
  const kept: FileEdit[] = [];
  for (const each of edits) {
    const last = kept.at(-1)?.edit.range.end;
    const { start } = each.edit.range;
    if (last === undefined || start.line > last.line || (start.line === last.line && start.character >= last.character))
      kept.push(each);
  }
  return kept;
}

/** With the versions that the edits are for, where the editor takes them. */
export function workspaceEdit(edits: readonly FileEdit[], { client, addresses }: View): WorkspaceEdit {
  const byPath = new Map<string, FileEdit[]>();
  for (const each of edits) byPath.set(each.path, [...(byPath.get(each.path) ?? []), each]);
  if (!client.versionedEdits)
    return { changes: Object.fromEntries([...byPath].map(([path, list]) => [addresses.uriOf(path), textEdits(list)])) };
  return { documentChanges: [...byPath].map(([path, list]) => documentEdit(path, list, addresses)) };
}

function documentEdit(path: string, list: readonly FileEdit[], addresses: Addresses) {
  return {
    textDocument: { uri: addresses.uriOf(path), version: addresses.versionOf(path) ?? null },
    edits: textEdits(list),
  };
}

function textEdits(list: readonly FileEdit[]) {
  return list.map(({ edit }) => edit);
}

function touches(found: Range | undefined, { start, end }: Range): boolean {
  return found !== undefined && found.start.line <= end.line && found.end.line >= start.line;
}
