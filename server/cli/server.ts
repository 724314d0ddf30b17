// `screed server --stdio`: the language server, loaded only here, so that no other command waits for it.

/** Runs until the editor hangs up. */
export async function serve(): Promise<void> {
  const { startServer } = await import('#server/main');
  startServer();
}
