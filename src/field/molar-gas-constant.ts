/** Molar gas constant, J/(mol K): exact since the SI of 2019. */
export const MOLAR_GAS_CONSTANT = 8.31446261815324;
