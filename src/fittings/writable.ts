import { createContext, useContext } from 'react';

/** Why nothing can be changed here at present, in words; null where it can. */
const Unwritable = createContext<string | null>(null);

export const UnwritableProvider = Unwritable.Provider;

export const useUnwritable = (): string | null => useContext(Unwritable);
