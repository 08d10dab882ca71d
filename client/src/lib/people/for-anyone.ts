/** Whether an address is for people who were handed it, members or not: a provenance sheet, and the page that checks one. */
export const isForAnyone = ({ pathname }: Pick<URL, 'pathname'>): boolean => /^\/(s\/|check\/?$)/.test(pathname);
