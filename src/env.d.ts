declare namespace App {
  interface Locals {
    /** The chapter being rendered: its cells read it. */
    chapter?: import('./site/chapters.ts').Chapter
  }
}
