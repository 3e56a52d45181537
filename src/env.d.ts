declare namespace App {
  interface Locals {
    /** The chapter being rendered: its cells read it. */
    chapter?: import('./site/chapters.ts').Chapter
    /** The design of the plan being rendered: a number that names no other is read off it. */
    design?: import('./paper/index.ts').Design
  }
}
