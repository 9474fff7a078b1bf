// Package blade computes the stiffness of a squeegee blade and how far its edge leans once the
// line load bends it.
//
// Angles are degrees from vertical (0 is straight up), line loads N per cm of blade, lengths
// mm, moduli MPa, rigidities N m (N m2 per m of blade, plane strain). Rubber is taken as
// incompressible, Poisson's ratio 0.5.
//
// Sources: modulus from hardness after Gent, Rubber Chemistry and Technology, 1958 [1] (constants
// from memory), and Ruess as quoted by Qi, Joyce and Boyce, Rubber Chemistry and Technology,
// 2003 [2]; layered section by the transformed-section method; large bending checked against
// Bisshopp and Drucker, Quarterly of Applied Mathematics, 1945 [3].
package blade
