/**
 * What comes of it, or null when that takes longer than `ms`; it goes on then, and whoever asks again may find it done, or
 * failed. Without `ms` there is no limit.
 */
export const withinTime = async <T>(coming: Promise<T>, ms?: number): Promise<T | null> => {
  if (ms === undefined) return coming;
  let timer: NodeJS.Timeout | undefined;
  const over = new Promise<null>((resolve) => {
    timer = setTimeout(resolve, ms, null);
  });
  try {
    return await Promise.race([coming, over]);
  } finally {
    clearTimeout(timer);
  }
};
