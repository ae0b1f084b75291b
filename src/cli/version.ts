declare const NESTREACH_VERSION: string

/** The package's version, written in when the command line is built. */
export const version: string = NESTREACH_VERSION
