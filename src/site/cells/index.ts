import Answer from './Answer.astro'
import Challenge from './Challenge.astro'
import Formula from './Formula.astro'
import ForTeachers from './ForTeachers.astro'
import Goal from './Goal.astro'
import GoesWrong from './GoesWrong.astro'
import Guess from './Guess.astro'
import MakeIt from './MakeIt.astro'
import MeasureYours from './MeasureYours.astro'
import Num from './Num.astro'
import Predict from './Predict.astro'
import Sign from './Sign.astro'
import Slip from './Slip.astro'
import Step from './Step.astro'
import TakeCare from './TakeCare.astro'
import Term from './Term.astro'
import TryIt from './TryIt.astro'
import Why from './Why.astro'

/** Every word an author may use in a chapter, by name. words.ts says what each takes. */
export const cells = {
  Answer,
  Challenge,
  ForTeachers,
  Formula,
  Goal,
  GoesWrong,
  Guess,
  MakeIt,
  MeasureYours,
  Num,
  Predict,
  Sign,
  Slip,
  Step,
  TakeCare,
  Term,
  TryIt,
  Why,
}
