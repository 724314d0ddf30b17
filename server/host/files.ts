// What Screed needs from a disk, and nothing more: reading files, looking into folders, following links. Paths have '/'
// between their parts on every machine; an absolute one begins with '/' or a drive ('C:/').

export interface Entry {
  readonly name: string;
  readonly kind: 'file' | 'folder';
}

export interface Files {
  /** The text of a file, a byte order mark left out; undefined where there is none or it cannot be read. */
  readonly read: (path: string) => string | undefined;
  /** What lies in a folder, by name; nothing where there is none. Links are told as what they lead to. */
  readonly list: (folder: string) => readonly Entry[];
  /** The path with its links followed; of what does not exist, as far as it does. */
  readonly real: (path: string) => string;
  /** Whether a folder is too wide to be looked through: the root of a disk, or a person's home. */
  readonly tooWide: (folder: string) => boolean;
}

/** The folder a path lies in; '' for a lone name. */
export function folderOf(path: string): string {
  const slash = path.lastIndexOf('/');
  return slash < 0 ? '' : slash === 0 ? '/' : path.slice(0, slash);
}

/** Whether a path lies in a folder, or below it. */
export function isWithin(path: string, folder: string): boolean {
  return folder === '' || path.startsWith(folder.endsWith('/') ? folder : `${folder}/`);
}

/** The nearest folder above a file that is under version control; else the file's own. */
export function projectFolder(path: string, files: Files): string {
  const own = folderOf(path);
  for (let folder = own; folder !== ''; folder = folderOf(folder)) {
    if (files.list(folder).some(({ name }) => name === '.git')) return folder;
    if (folderOf(folder) === folder) break;
  }
  return own;
}

const WITHOUT_PLANS = /^(?:\..*|node_modules|dist|build|out|target|coverage)$/;

/** Whether a folder of this name is looked into for plans: what tools keep and make is not. */
export function holdsPlans(name: string): boolean {
  return !WITHOUT_PLANS.test(name);
}
