/** The figures and names that a problem's sentence is made of. */
export type ProblemValues = Readonly<Record<string, string | number | boolean | null>>

/** Makes the sentence: what happened, what was kept, what to do. */
export type Wording = (values: ProblemValues) => string
