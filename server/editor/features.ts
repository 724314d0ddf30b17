// DOOR: every feature an editor can ask for, one file each. A feature says which request it answers, what it tells the
// editor beforehand, and answers from a view of the file as it is now.

import type { Client } from './client.ts';
import { inlayHints } from './inlay-hints.ts';
import type { View, WideView } from './view.ts';

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

export const features: readonly Feature[] = [inlayHints];
export const wideFeatures: readonly WideFeature[] = [];

/** All that the features offer to an editor, as one record. */
export function offeredTo(client: Client): { readonly [capability: string]: unknown } {
  return Object.assign({}, ...[...features, ...wideFeatures].map(({ offers }) => offers(client)));
}
