// A job file in a link: packed by the browser, so that it stays short enough to send.

const FORMAT = 'deflate-raw';

async function through(
  bytes: Uint8Array<ArrayBuffer>,
  by: GenericTransformStream,
): Promise<ArrayBuffer> {
  return new Response(new Blob([bytes]).stream().pipeThrough(by)).arrayBuffer();
}

/** Packs text into letters. */
export async function packText(text: string): Promise<string> {
  const bytes = new Uint8Array(
    await through(new TextEncoder().encode(text), new CompressionStream(FORMAT)),
  );
  return btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(''));
}

/** Text from letters; undefined where they are no packed text. */
export async function unpackText(packed: string): Promise<string | undefined> {
  try {
    const bytes = Uint8Array.from(atob(packed), (letter) => letter.charCodeAt(0));
    return new TextDecoder().decode(await through(bytes, new DecompressionStream(FORMAT)));
  } catch {
    return undefined;
  }
}
