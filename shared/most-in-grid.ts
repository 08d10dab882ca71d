/** As many animals as a grid of each with each other holds: the service tells the young of each two of so many, and no screen draws more. */
export const mostInGrid = 60;
