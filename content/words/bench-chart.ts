/** The chart of a bench. */

export const openingOnChart = 'Opening, on the chart'
