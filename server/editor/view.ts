// What every feature is handed: a file as it stands now, within the plans that hold it, and whom the answer is for.
import type { ProfileName } from '#answers/profiles';
import type { FileNames } from '#model/file-names';
import type { Plan } from '#server/pipeline';
import type { Client } from './client.ts';

/** The files of an editor: their addresses and the versions of those that are open. */
export interface Addresses {
  /** The address of a file, in the editor's own spelling where it has one. */
  readonly uriOf: (path: string) => string;
  readonly versionOf: (path: string) => number | undefined;
  readonly isInLibrary: (path: string) => boolean;
  /** The address of a page of the rule reference, by its path there; absent where an editor cannot open them. */
  readonly pageOf?: (path: string) => string;
}

export interface View {
  /** The file as the first of the plans has it. */
  readonly file: FileNames;
  readonly plan: Plan;
  /** All plans that hold the file. */
  readonly plans: readonly Plan[];
  readonly client: Client;
  /** Who reads, where the editor was told; else each plan says. */
  readonly profile?: ProfileName | undefined;
  readonly addresses: Addresses;
  /** Colours as they were sent last, by path: kept by whoever holds the connection. */
  readonly coloursSent: Map<string, ColoursSent>;
}

export interface ColoursSent {
  readonly id: string;
  readonly data: readonly number[];
}

/** What a feature that is about no file is handed. */
export interface WideView {
  readonly plans: readonly Plan[];
  readonly client: Client;
  readonly addresses: Addresses;
}

export function fileIn(plan: Plan, path: string): FileNames | undefined {
  return plan.model.files.find((file) => file.path === path) ?? plan.model.library.files.find((file) => file.path === path);
}

/** What a request asks for cannot be done, for a reason the person should read. */
export interface Refusal {
  readonly refused: string;
}

export function refusal(why: string): Refusal {
  return { refused: why };
}

export function isRefusal(answer: unknown): answer is Refusal {
  return typeof answer === 'object' && answer !== null && 'refused' in answer;
}
