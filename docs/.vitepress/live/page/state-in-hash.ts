// The state of what was edited stands in the hash of the address: `#loads=...&lifts=...`. It is never
// sent to a server, and a link to it opens the same state.

const encoder = new TextEncoder();
const decoder = new TextDecoder('utf-8', { fatal: true });

/** Text in the letters that an address may hold. */
function encode(text: string): string {
  const bytes = Array.from(encoder.encode(text), (byte) => String.fromCharCode(byte)).join('');
  return btoa(bytes).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
}

/** The text back; undefined where it is no such text. */
function decode(code: string): string | undefined {
  try {
    const bytes = atob(code.replaceAll('-', '+').replaceAll('_', '/'));
    return decoder.decode(Uint8Array.from(bytes, (letter) => letter.charCodeAt(0)));
  } catch {
    return undefined;
  }
}

const isState = (part: string): boolean => /^[\w.-]+=[\w-]*$/.test(part);

const statesOf = (hash: string): Map<string, string> =>
  new Map(
    hash
      .replace(/^#/, '')
      .split('&')
      .filter(isState)
      .map((part) => {
        const equals = part.indexOf('=');
        return [part.slice(0, equals), part.slice(equals + 1)];
      }),
  );

/** The state under a name; undefined where the address has none. */
export function stateInHash(name: string): string | undefined {
  const code = statesOf(location.hash).get(name);
  return code === undefined ? undefined : decode(code);
}

/** The address with a state of one name alone. */
export function linkWithState(name: string, state: string): string {
  const address = new URL(location.href);
  address.hash = `${name}=${encode(state)}`;
  return address.href;
}

/** Writes the state under a name into the address; undefined takes it away. Nothing is loaded. */
export function keepStateInHash(name: string, state: string | undefined): void {
  const states = statesOf(location.hash);
  if (state === undefined) {
    if (!states.delete(name)) return;
  } else states.set(name, encode(state));
  const hash = [...states].map(([key, code]) => `${key}=${code}`).join('&');
  const address = new URL(location.href);
  address.hash = hash;
  history.replaceState(history.state, '', address.href);
}
