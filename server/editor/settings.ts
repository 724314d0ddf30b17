// What an editor was set to, as loosely as editors send it: the section `screed`, or what stands in it.
import { type ProfileName, profileNamed } from '#answers/profiles';

export interface Settings {
  /** Who reads the findings; undefined where the plan shall say. */
  readonly profile: ProfileName | undefined;
}

/** What is not spoken of stays as it was: some editors send an empty section when they begin. */
export function settingsOf(sent: unknown, before: Settings = { profile: undefined }): Settings {
  const profile = at(at(sent, 'screed') ?? sent, 'profile');
  return profile === undefined ? before : { profile: typeof profile === 'string' ? profileNamed(profile) : undefined };
}

function at(value: unknown, name: string): unknown {
  return typeof value === 'object' && value !== null ? (value as { readonly [name: string]: unknown })[name] : undefined;
}
