/**
 * Whether a browser that asks for these languages (Accept-Language, RFC 9110, 12.5.4) is at home in the United States: by the
 * region of the first one it names. "en-US,en;q=0.9" is, "en-GB,en-US;q=0.8" and none are not.
 */
export const isInUs = (languages: string | undefined): boolean => {
  const [first = ''] = (languages ?? '').split(',');
  try {
    return new Intl.Locale(first.split(';')[0]?.trim() ?? '').region === 'US';
  } catch {
    return false;
  }
};
