export const hidden: boolean = true;
