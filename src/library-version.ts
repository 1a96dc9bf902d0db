/** Version of the library, as package.json has it. A saved plan says by which one it was planned. Internal. */
export const LIBRARY_VERSION = '0.2.0';
