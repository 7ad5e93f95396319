import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';

interface ChosenVehicle {
  /** Null: the one whose packs get warmest that day. */
  readonly id: string | null;
  choose(id: string): void;
}

/** The vehicle that chart and stops are shown of. Not in the address: the day says which vehicles there are to choose from. */
const store = createStore<ChosenVehicle>((set) => ({ id: null, choose: (id) => set({ id }) }));

export const useChosenVehicle = (): ChosenVehicle => useStore(store);
