/** A sheet of A4 or Letter upright, as wide and as high in pixels as letters of 12 pixels stay well legible on it. */
export const sheetWidth = 880;
export const sheetHeight = 1080;
