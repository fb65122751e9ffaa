import { useEffect, useState } from 'react';

/** Address of a file while it is shown. */
export function useAddress(file: Blob): string | null {
  const [url, setUrl] = useState<string | null>(null);
  useEffect(() => {
    const made = URL.createObjectURL(file);
    // oxlint-disable-next-line react/set-state-in-effect -- the address lives as long as the effect
    setUrl(made);
    return () => URL.revokeObjectURL(made);
  }, [file]);
  return url;
}
