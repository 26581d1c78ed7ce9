/** Name of all papers in one file. */
export const allPapers = 'papers.zip';
