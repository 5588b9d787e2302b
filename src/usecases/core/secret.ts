const SECRET_BYTES = 24;

/** A secret nobody can guess: 192 bits by chance, in letters and digits that an address may have. */
export const newSecret = (): string =>
  btoa(String.fromCharCode(...crypto.getRandomValues(new Uint8Array(SECRET_BYTES))))
    .replaceAll('+', '-')
    .replaceAll('/', '_');

/** What is kept of a secret: its SHA-256 in hexadecimal (FIPS 180-4). */
export const hashOf = async (secret: string): Promise<string> => {
  const hash = await crypto.subtle.digest('SHA-256', new TextEncoder().encode(secret));
  return Array.from(new Uint8Array(hash), (byte) => byte.toString(16).padStart(2, '0')).join('');
};
