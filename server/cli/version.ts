// The version of the program, set when it is bundled.

declare const SCREED_VERSION: string | undefined;

export const version = typeof SCREED_VERSION === 'string' ? SCREED_VERSION : '0.0.0';
