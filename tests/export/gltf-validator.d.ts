declare module 'gltf-validator' {
  interface Issue {
    readonly code: string
    readonly message: string
    /** 0 an error, 1 a warning, 2 a remark, 3 a hint. */
    readonly severity: number
    readonly pointer?: string
  }
  interface Report {
    readonly issues: {
      readonly numErrors: number
      readonly numWarnings: number
      readonly messages: readonly Issue[]
    }
    readonly info: Readonly<Record<string, unknown>>
  }
  export function validateBytes(
    data: Uint8Array,
    options?: { readonly format?: 'glb' | 'gltf'; readonly maxIssues?: number },
  ): Promise<Report>
}
