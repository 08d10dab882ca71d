/** F above which a grid marks a pair until somebody says otherwise: that of young of cousins. */
export const startingLimit = 0.0625;
