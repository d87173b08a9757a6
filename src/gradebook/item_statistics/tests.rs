use super::*;
use crate::MarkRule;
use crate::tests::{graded, lost, side};
use detent_training::lesson::Loss;

/// Answers of 30 departments to seven questions, percent: Chatterjee and Price, Regression Analysis by Example (1977), as
/// the data set `attitude` that comes with R; from memory, and held against the means that are printed with it.
const ATTITUDE: [[u8; 7]; 30] = [
    [43, 51, 30, 39, 61, 92, 45],
    [63, 64, 51, 54, 63, 73, 47],
    [71, 70, 68, 69, 76, 86, 48],
    [61, 63, 45, 47, 54, 84, 35],
    [81, 78, 56, 66, 71, 83, 47],
    [43, 55, 49, 44, 54, 49, 34],
    [58, 67, 42, 56, 66, 68, 35],
    [71, 75, 50, 55, 70, 66, 41],
    [72, 82, 72, 67, 71, 83, 31],
    [67, 61, 45, 47, 62, 80, 41],
    [64, 53, 53, 58, 58, 67, 34],
    [67, 60, 47, 39, 59, 74, 41],
    [69, 62, 57, 42, 55, 63, 25],
    [68, 83, 83, 45, 59, 77, 35],
    [77, 77, 54, 72, 79, 77, 46],
    [81, 90, 50, 72, 60, 54, 36],
    [74, 85, 64, 69, 79, 79, 63],
    [65, 60, 65, 75, 55, 80, 60],
    [65, 70, 46, 57, 75, 85, 46],
    [50, 58, 68, 54, 64, 78, 52],
    [50, 40, 33, 34, 43, 64, 33],
    [64, 61, 52, 62, 66, 80, 41],
    [53, 66, 52, 50, 63, 80, 37],
    [40, 37, 42, 58, 50, 57, 49],
    [63, 54, 42, 48, 66, 75, 33],
    [66, 77, 66, 63, 88, 76, 72],
    [78, 75, 58, 74, 80, 78, 49],
    [48, 57, 44, 45, 51, 83, 38],
    [85, 85, 71, 71, 77, 74, 55],
    [82, 82, 39, 59, 64, 78, 39],
];

#[test]
fn the_published_example_comes_out_as_two_other_programs_have_it() {
    let rows: Vec<Vec<Option<f64>>> = (ATTITUDE.iter())
        .map(|row| row.iter().map(|x| Some(f64::from(*x) / 100.0)).collect())
        .collect();
    // Means as they are printed with the data; the column `r.drop` of `alpha(attitude)` in the documentation of R's package
    // psych, from memory; and `statistics.correlation` of Python 3.11's standard library, run once.
    let published = [
        (0.646, 0.67, 0.671_262_057_223_674_4),
        (0.666, 0.74, 0.742_109_710_222_238_6),
        (0.531, 0.56, 0.560_711_111_480_255_7),
        (0.564, 0.71, 0.714_445_498_133_676_2),
        (0.646, 0.79, 0.786_275_593_834_399_9),
        (0.748, 0.27, 0.265_034_339_196_676_07),
        (0.429, 0.46, 0.460_810_549_468_496_53),
    ];
    for (item, (mean, printed, exact)) in published.into_iter().enumerate() {
        let shares: Vec<f64> = rows.iter().filter_map(|row| row[item]).collect();
        let found = difficulty(&shares).expect("there are some");
        assert!((found - mean).abs() < 0.000_5, "item {item}: {found}");
        let found = corrected_item_total(&rows, item).expect("30 rows");
        assert!((found - printed).abs() < 0.005, "item {item}: {found}");
        assert!((found - exact).abs() < 1e-12, "item {item}: {found}");
    }
}

#[test]
fn a_discrimination_needs_learners_who_differ_and_did_other_jobs_too() {
    let row = |shares: &[f64]| shares.iter().map(|share| Some(*share)).collect::<Vec<_>>();
    let rows: Vec<_> = [0.1, 0.2, 0.3, 0.4, 0.5]
        .map(|share| row(&[share, 2.0 * share, 0.7]))
        .into();
    // Both rise together; the third item does not vary, and leaves the rest as it is.
    let found = corrected_item_total(&rows, 0).expect("five learners");
    assert!((found - 1.0).abs() < 1e-12, "{found}");
    assert_eq!(corrected_item_total(&rows, 2), None);
    assert_eq!(corrected_item_total(&rows[1..], 0), None, "four learners");
    assert_eq!(corrected_item_total(&rows, 9), None, "no such item");
    // An item is never held against itself: alone it has nothing to be held against.
    let alone: Vec<_> = rows.iter().map(|row| vec![row[0], None]).collect();
    assert_eq!(corrected_item_total(&alone, 0), None);
    // Whoever lacks the item is left out and is no zero.
    let mut with_a_gap = rows.clone();
    with_a_gap.push(vec![None, Some(1.0), Some(0.0)]);
    let found = corrected_item_total(&with_a_gap, 0).expect("five learners");
    assert!((found - 1.0).abs() < 1e-12, "{found}");
    assert_eq!(difficulty(&[]), None);
}

#[test]
fn what_went_wrong_is_counted_once_a_learner_by_the_attempt_that_counts() {
    let misread = |noted, shown: &[u8]| {
        let shown = shown.to_vec();
        lost(1.0, Loss::Misread { noted, shown })
    };
    let with = |seat, begun_ms, share, losses: Vec<_>, unsafe_acts| {
        let mut attempt = graded(seat, "one", begun_ms, share);
        let sides = &mut attempt.result.score.dimensions;
        sides[0].lost = losses;
        sides.push(side(Dimension::Safety, 0.0, 0.0, unsafe_acts));
        attempt
    };
    let attempts = vec![
        with(
            1,
            1,
            0.8,
            vec![
                lost(2.0, Loss::NeverEntered),
                misread(24, &[42]),
                misread(24, &[7]),
            ],
            vec![lost(3.0, Loss::Shock), lost(3.0, Loss::Shock)],
        ),
        // This one does not count: the same learner has a better one.
        with(
            1,
            2,
            0.1,
            vec![lost(9.0, Loss::NoReport)],
            vec![lost(9.0, Loss::Flood)],
        ),
        with(
            2,
            3,
            0.6,
            vec![lost(5.0, Loss::NoEvidence), misread(24, &[42])],
            vec![],
        ),
        with(
            3,
            4,
            1.0,
            vec![
                lost(0.5, Loss::NeverEntered),
                lost(0.0, Loss::CodeSlip { noted: 5 }),
            ],
            vec![],
        ),
    ];
    let jobs = vec!["one".to_owned(), "two".to_owned()];
    let book = Gradebook::new(jobs, attempts, MarkRule::Best);
    let statistics = item_statistics(&book, &[1, 2, 3, 4]);
    let [one, two] = &statistics[..] else {
        panic!("{statistics:?}");
    };
    assert_eq!((one.learners, one.passed), (3, 2));
    assert!((one.difficulty.expect("three") - 0.8).abs() < 1e-12);
    assert_eq!(one.discrimination, None);
    let told = |losses: &[LossCount]| {
        let losses = losses.iter();
        losses
            .map(|loss| (loss.kind, loss.learners, loss.points))
            .collect::<Vec<_>>()
    };
    assert_eq!(
        told(&one.losses),
        [
            (LossKind::Misread, 2, 3.0),
            (LossKind::NeverEntered, 2, 2.5),
            (LossKind::NoEvidence, 1, 5.0),
            (LossKind::CodeSlip, 1, 0.0),
        ]
    );
    assert_eq!(told(&one.unsafe_acts), [(LossKind::Shock, 1, 6.0)]);
    let codes: Vec<_> = (one.misread.iter())
        .map(|code| (code.noted, code.learners, &code.shown[..]))
        .collect();
    assert_eq!(codes, [(24, 2, &[7, 42][..]), (5, 1, &[][..])]);
    assert_eq!((two.learners, two.difficulty), (0, None));
}
