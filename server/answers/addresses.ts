// Paths of files as programs outside read them: '/' between the parts on every machine, and as addresses.

/** 'C:\plans\a.screed' and '\\server\plans\a.screed' with '/' between their parts; others as they are. */
export function plainPath(path: string): string {
  return /^(?:[A-Za-z]:\\|\\\\)/.test(path) ? path.replaceAll('\\', '/') : path;
}

/** RFC 3986: a relative path stays relative; what is no letter of an address is percent-encoded, part by part. */
export function addressOf(path: string): string {
  const plain = plainPath(path);
  const encoded = plain
    .split('/')
    .map((part) => encodeURIComponent(part.replace(/[\ud800-\udfff]/gu, '\ufffd')))
    .join('/');
  if (/^[A-Za-z]:\//.test(plain)) return `file:///${plain[0]!.toUpperCase()}:${encoded.slice(encoded.indexOf('/'))}`;
  if (plain.startsWith('//')) return `file:${encoded}`;
  return plain.startsWith('/') ? `file://${encoded}` : encoded;
}
