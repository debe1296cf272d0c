//! Linear least squares for a handful of unknowns.
//!
//! A plain orthogonalisation instead of a linear-algebra library: those bring a matrix type, decompositions
//! and their generic code to every phone for a fit of five columns. Checked against NIST's reference data.

/// What a fit found.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Fit {
    /// One coefficient a column.
    pub(crate) coefficients: Vec<f64>,
    /// What each row is off by: observed less fitted.
    pub(crate) residuals: Vec<f64>,
}

/// A column that the others explain to within this share of its length says nothing of its own.
const TELLS_NOTHING: f64 = 1e-7;

/// Fits `observed ≈ Σ coefficient · column`; `None` when the columns cannot be told apart by these rows.
///
/// Modified Gram-Schmidt with each column orthogonalised twice, which keeps all the digits the data hold.
pub(crate) fn fit(columns: &[Vec<f64>], observed: &[f64]) -> Option<Fit> {
    let mut basis: Vec<Vec<f64>> = Vec::new();
    let mut triangle: Vec<Vec<f64>> = Vec::new();
    for column in columns {
        let (direction, mut shares, length) = orthogonal(column, &basis);
        let full = dot(column, column).sqrt();
        if length <= TELLS_NOTHING * full || length == 0.0 {
            return None;
        }
        basis.push(direction.iter().map(|value| value / length).collect());
        shares.push(length);
        triangle.push(shares);
    }
    let (residuals, shares, _) = orthogonal(observed, &basis);
    Some(Fit {
        coefficients: back_substituted(&triangle, &shares),
        residuals,
    })
}

/// What is left of a vector beside a basis, the shares taken out, and the length of what is left.
fn orthogonal(vector: &[f64], basis: &[Vec<f64>]) -> (Vec<f64>, Vec<f64>, f64) {
    let mut rest = vector.to_vec();
    let mut shares = vec![0.0; basis.len()];
    for _ in 0..2 {
        for (direction, share) in basis.iter().zip(&mut shares) {
            let part = dot(&rest, direction);
            *share += part;
            for (value, along) in rest.iter_mut().zip(direction) {
                *value -= part * along;
            }
        }
    }
    let length = dot(&rest, &rest).sqrt();
    (rest, shares, length)
}

fn dot(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(x, y)| x * y).sum()
}

/// Solves the triangle from its last column to its first.
fn back_substituted(triangle: &[Vec<f64>], shares: &[f64]) -> Vec<f64> {
    let mut left = shares.to_vec();
    let mut coefficients = vec![0.0; triangle.len()];
    for (index, column) in triangle.iter().enumerate().rev() {
        let (Some(diagonal), Some(share)) = (column.last(), left.get(index).copied()) else {
            continue;
        };
        let coefficient = share / diagonal;
        for (value, entry) in left.iter_mut().zip(column) {
            *value -= coefficient * entry;
        }
        if let Some(place) = coefficients.get_mut(index) {
            *place = coefficient;
        }
    }
    coefficients
}

#[cfg(test)]
mod tests {
    use super::fit;

    /// `NIST StRD`, data set «Norris» (linear, lower difficulty), as published: y, x.
    const NORRIS: [(f64, f64); 36] = [
        (0.1, 0.2),
        (338.8, 337.4),
        (118.1, 118.2),
        (888.0, 884.6),
        (9.2, 10.1),
        (228.1, 226.5),
        (668.5, 666.3),
        (998.5, 996.3),
        (449.1, 448.6),
        (778.9, 777.0),
        (559.2, 558.2),
        (0.3, 0.4),
        (0.1, 0.6),
        (778.1, 775.5),
        (668.8, 666.9),
        (339.3, 338.0),
        (448.9, 447.5),
        (10.8, 11.6),
        (557.7, 556.0),
        (228.3, 228.1),
        (998.0, 995.8),
        (888.8, 887.6),
        (119.6, 120.2),
        (0.3, 0.3),
        (0.6, 0.3),
        (557.6, 556.8),
        (339.3, 339.1),
        (888.0, 887.2),
        (998.5, 999.0),
        (778.9, 779.0),
        (10.2, 11.1),
        (117.6, 118.3),
        (228.9, 229.2),
        (668.4, 669.1),
        (449.2, 448.9),
        (0.2, 0.5),
    ];

    #[test]
    fn a_published_reference_fit() {
        // Certified: B0 −0.262323073774029, B1 1.00211681802045, residual standard deviation 0.884796396144373.
        let ones = vec![1.0; NORRIS.len()];
        let x = NORRIS.iter().map(|(_, x)| *x).collect();
        let y: Vec<f64> = NORRIS.iter().map(|(y, _)| *y).collect();
        let fit = fit(&[ones, x], &y).unwrap();
        assert!(
            (fit.coefficients[0] + 0.262_323_073_774_029).abs() < 1e-12,
            "{:?}",
            fit.coefficients
        );
        assert!(
            (fit.coefficients[1] - 1.002_116_818_020_45).abs() < 1e-14,
            "{:?}",
            fit.coefficients
        );
        let squares: f64 = fit.residuals.iter().map(|value| value * value).sum();
        assert!(((squares / 34.0).sqrt() - 0.884_796_396_144_373).abs() < 1e-12);
    }

    #[test]
    fn columns_that_say_the_same_are_refused() {
        let column = vec![1.0, 2.0, 3.0];
        assert_eq!(
            fit(
                &[column.clone(), column.iter().map(|x| x * 2.0).collect()],
                &[1.0, 2.0, 3.0]
            ),
            None
        );
        assert_eq!(fit(&[vec![0.0; 3]], &[1.0, 2.0, 3.0]), None);
    }
}
