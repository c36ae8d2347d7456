//! Several results from correlated inputs: sensitivities by differencing, and the law of propagation.

use nalgebra::DMatrix;

/// The matrix of sensitivities c_ji = ∂y_j/∂x_i of a model, one row for each result and one column for each input, in
/// units of the result over units of the input.
///
/// Each is the difference of the model at x_i + h_i and x_i − h_i, over the distance between the two. With the
/// standard uncertainties as `steps` h this is GUM 5.1.3, note 2: the slope over the region that matters, so that
/// its product with u(x_i) is half the change that ±u(x_i) makes.
///
/// `None` when there is no input, when the steps are not one for each input, when a step is not a positive number
/// large enough to move its input, or when the model gives no value, a value that is not finite, or now more and
/// now fewer results. An input without uncertainty still needs a step, if its sensitivity is asked for.
///
/// # Example
/// ```
/// use slope_engine::budget::sensitivities;
/// let ohm = |x: &[f64]| Some(vec![x[0] / x[1]]);
/// let c = sensitivities(ohm, &[6.0, 2.0], &[0.01, 0.001]).ok_or("no value")?;
/// assert!((c[(0, 0)] - 0.5).abs() < 1e-12 && (c[(0, 1)] + 1.5).abs() < 1e-6);
/// # Ok::<(), &str>(())
/// ```
pub fn sensitivities(
    model: impl Fn(&[f64]) -> Option<Vec<f64>>,
    at: &[f64],
    steps: &[f64],
) -> Option<DMatrix<f64>> {
    if at.len() != steps.len() {
        return None;
    }
    let columns = (0..at.len())
        .map(|input| column(&model, at, input, *steps.get(input)?))
        .collect::<Option<Vec<_>>>()?;
    let n_results = columns.first()?.len();
    columns
        .iter()
        .all(|column| column.len() == n_results)
        .then(|| DMatrix::from_vec(n_results, at.len(), columns.concat()))
}

/// The sensitivities of all results to one input.
fn column(
    model: impl Fn(&[f64]) -> Option<Vec<f64>>,
    at: &[f64],
    input: usize,
    step: f64,
) -> Option<Vec<f64>> {
    let moved = |by: f64| {
        let mut inputs = at.to_vec();
        let place = inputs.get_mut(input)?;
        *place += by;
        let place = *place;
        Some((place, model(&inputs)?))
    };
    let (high, above) = moved(step)?;
    let (low, below) = moved(-step)?;
    let span = high - low;
    let slopes: Vec<f64> = above.iter().zip(&below).map(|(above, below)| (above - below) / span).collect();
    let sound = span > 0.0 && above.len() == below.len() && slopes.iter().all(|slope| slope.is_finite());
    sound.then_some(slopes)
}

/// The covariance matrix of the results: C V Cᵀ, with C the sensitivities and V the covariance matrix of the inputs
/// (GUM 5.2.2, eq. 13, for one result; H.2.3, and JCGM 102:2011, 6.2, for several). Its units are the products of
/// those of two results.
///
/// The result is symmetric to the last bit. `None` when the sizes of the two do not fit together.
pub fn propagate(jacobian: &DMatrix<f64>, covariance: &DMatrix<f64>) -> Option<DMatrix<f64>> {
    let n_inputs = jacobian.ncols();
    if covariance.shape() != (n_inputs, n_inputs) {
        return None;
    }
    let product = jacobian * covariance * jacobian.transpose();
    Some((&product + product.transpose()) / 2.0)
}
