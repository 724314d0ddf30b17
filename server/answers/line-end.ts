// How a text ends its lines: what is added follows the majority, so that no file ends up with both.
export function lineEndOf(text: string): '\n' | '\r\n' {
  let returns = 0;
  let feeds = 0;
  for (let at = text.indexOf('\n'); at >= 0 && returns + feeds < 1000; at = text.indexOf('\n', at + 1)) {
    if (text.charCodeAt(at - 1) === 13) returns += 1;
    else feeds += 1;
  }
  return returns > feeds ? '\r\n' : '\n';
}
