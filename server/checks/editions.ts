// Which edition of a code a plan names, and where a row stands in it. A section is printed only of an edition that the row
// itself lists.
import type { Element, ElementOf } from '#model/model';
import type { Model } from '#model/resolve';

type Sections = ElementOf<'minimum'>['given']['section'];

/** 'irc-2021', in small letters; undefined where the plan names none. */
export function editionOf(model: Model): string | undefined {
  return model.plan?.given.code?.value.toLowerCase();
}

/** 'irc-2021 R304.1'; undefined where the row does not know the edition. */
export function sectionIn(sections: Sections, edition: string | undefined): string | undefined {
  if (edition === undefined) return undefined;
  const found = sections.flatMap(({ value }) => value).find(({ value }) => value.edition.toLowerCase() === edition)?.value;
  return found === undefined ? undefined : `${edition} ${found.section}`;
}

/** A row's source, led by the section of the plan's edition. */
export function sourceIn(
  { given }: Element & { readonly given: { readonly section: Sections } },
  edition: string | undefined,
): string | undefined {
  const parts = [sectionIn(given.section, edition), given.source?.value].filter((part) => part !== undefined);
  return parts.length === 0 ? undefined : parts.join('; ');
}

/** 'R109.1.1 (irc-2018), R109.1.1 (irc-2021)': all that a row knows. */
export function sectionsText(sections: Sections): string {
  return sections
    .flatMap(({ value }) => value)
    .map(({ value }) => `${value.section} (${value.edition})`)
    .join(', ');
}
