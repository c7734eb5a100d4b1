/** A style sheet is taken for its effect on the page alone. */
declare module '*.css'
