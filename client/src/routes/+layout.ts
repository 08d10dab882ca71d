// One static shell for every address; the service answers the rest.
export const ssr = false;
export const prerender = false;
