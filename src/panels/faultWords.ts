import { createContext, useContext } from 'react';
import type { Fault } from '../base/fault.ts';

/** How a fault is put in words; the window gives it, since the words belong to the plan. */
const FaultWords = createContext<(fault: Fault) => string>(({ code }) => code);

export const FaultWordsProvider = FaultWords.Provider;

export const useFaultWords = (): ((fault: Fault) => string) => useContext(FaultWords);
