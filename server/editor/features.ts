// DOOR: every feature an editor can ask for, one file each. A feature says which request it answers, what it tells the
// editor beforehand, and answers from a view of the file as it is now.
import type { Client } from './client.ts';
import { codeActions } from './code-actions.ts';
import { completion } from './completion.ts';
import { definition } from './definition.ts';
import { folding } from './folding.ts';
import { formatting, rangeFormatting } from './formatting.ts';
import { highlights } from './highlights.ts';
import { hover } from './hover.ts';
import { inlayHintResolve, inlayHints } from './inlay-hints.ts';
import { links } from './links.ts';
import { references } from './references.ts';
import { prepareRename, rename } from './rename.ts';
import { selection } from './selection.ts';
import { semanticTokens, semanticTokensDelta, semanticTokensRange } from './semantic-tokens.ts';
import { signature } from './signature.ts';
import { symbols } from './symbols.ts';
import type { View, WideView } from './view.ts';
import { prepareWaiting, waitedFor, waitingFor } from './waiting.ts';
import { workspaceSymbols } from './workspace-symbols.ts';

/** A request about one file. `undefined` for an answer means there is none. */
export interface Feature {
  readonly method: string;
  /** What `initialize` answers for it; nothing where this editor has no use for it. */
  readonly offers: (client: Client) => { readonly [capability: string]: unknown };
  readonly answer: (view: View, params: never) => unknown;
}

/** A request about all that is open. */
export interface WideFeature {
  readonly method: string;
  readonly offers: (client: Client) => { readonly [capability: string]: unknown };
  readonly answer: (view: WideView, params: never) => unknown;
}

export const features: readonly Feature[] = [
  hover,
  inlayHints,
  inlayHintResolve,
  completion,
  signature,
  definition,
  references,
  highlights,
  rename,
  prepareRename,
  symbols,
  folding,
  selection,
  semanticTokens,
  semanticTokensRange,
  semanticTokensDelta,
  codeActions,
  links,
  formatting,
  rangeFormatting,
  prepareWaiting,
  waitingFor,
  waitedFor,
];
export const wideFeatures: readonly WideFeature[] = [workspaceSymbols];

/** All that the features offer to an editor, as one record. */
export function offeredTo(client: Client): { readonly [capability: string]: unknown } {
  return Object.assign({}, ...[...features, ...wideFeatures].map(({ offers }) => offers(client)));
}
