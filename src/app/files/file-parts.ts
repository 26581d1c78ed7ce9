/** Reader and writer of plan files, and the papers: none of them has a place in the first view. */
export { documentsOf } from '../../documents/documents.ts';
export { planRead } from '../../plan/read.ts';
export { planWrite } from '../../plan/write.ts';
