// The VS Code extension: starts the language server that lies beside it and hands the two to each other. Everything
// that knows plans is in the server.
import { join } from 'node:path';
import { commands, type ExtensionContext } from 'vscode';
import { LanguageClient, type LanguageClientOptions, type ServerOptions, TransportKind } from 'vscode-languageclient/node';

let client: LanguageClient | undefined;

export async function activate(context: ExtensionContext): Promise<void> {
  client = new LanguageClient('screed', 'Screed', serverIn(context.extensionPath), whatItSees);
  context.subscriptions.push(
    commands.registerCommand('screed.restart', () => client?.restart()),
    commands.registerCommand('screed.showLog', () => client?.outputChannel.show()),
  );
  await client.start();
}

export async function deactivate(): Promise<void> {
  await client?.stop();
}

const whatItSees: LanguageClientOptions = {
  documentSelector: [{ language: 'screed' }],
  synchronize: { configurationSection: 'screed' },
};

/** The editor's own Node runs the server: nothing else needs to be installed. */
function serverIn(folder: string): ServerOptions {
  return {
    command: process.execPath,
    args: [join(folder, 'dist', 'server.js')],
    transport: TransportKind.stdio,
    options: { env: { ...process.env, ELECTRON_RUN_AS_NODE: '1' } },
  };
}
