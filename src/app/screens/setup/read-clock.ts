/** '19:30', as the shoot document keeps it. */
export const isClock = (text: string): boolean => /^([01]\d|2[0-3]):[0-5]\d$/.test(text);
