// What went wrong with the way the program was called: told in one line, exit status 2. Anything else that is thrown is a
// fault of ours, exit status 3.

const MISUSE = 'Misuse';

export function misuse(message: string): Error {
  const error = new Error(message);
  error.name = MISUSE;
  return error;
}

export function isMisuse(error: unknown): error is Error {
  return error instanceof Error && error.name === MISUSE;
}
