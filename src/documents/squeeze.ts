/** How hard files are squeezed, of fflate's 0 to 9: at 6, its own choice, papers of many rooms take a fifth to a quarter longer and are 6 % (pages) to 11 %
 *  (workbook) smaller. The same everywhere, since the same papers are the same bytes. */
export const squeezeLevel = 4;
