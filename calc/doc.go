// Package calc holds no code. It is the list of what was read: each source stands here once in full, and the
// comments of the packages below refer to it by its number in brackets. A figure that comes from no source is
// marked common practice or from memory where it stands; choose/testdata/constants.md lists those. Where only an
// abstract, an excerpt or another's quotation was read, it is said. Numbers in templates/inks.toml are of this list
// too; 26, 30 and those from 54 on are of the ink classes alone.
//
//  1. Gent, Rubber Chemistry and Technology, 1958: modulus of rubber from its indentation hardness. The
//     constants are from memory.
//  2. Qi, Joyce, Boyce, Rubber Chemistry and Technology, 2003, where Ruess is quoted.
//  3. Bisshopp, Drucker, Quarterly of Applied Mathematics, 1945: large deflection of a cantilever.
//  4. Euler's column, as strength-of-materials textbooks have it, and the transformed section of the same
//     books.
//  5. J. Elliot, "The identity of a squeegee", July 2007.
//  6. Taylor, "On scraping viscous fluid from a plane surface", Tollmien Festschrift, 1962, 313-315.
//  7. Herrebrugh, Journal of Lubrication Technology, 1968: elastohydrodynamic line contact. The constant is
//     from memory.
//  8. Moes' relation for the same contact. From memory.
//  9. "A Study of the Abrasion of Squeegees Used in Screen Printing", Coatings 2014, 4, 356-379, doi
//     10.3390/coatings4020356. Only the abstract was read.
//  10. Doctoral thesis on the mechanics of screen printing, British Library EThOS 422613. Only the abstract
//     was read, which names no author and no year.
//  11. Textbook figures of laminar flow in a square duct (f Re = 56.9) and of the Hertz line contact. From
//     memory.
//  12. "How Much Ink Do You Need?", Screen Printing, April 2000, Table 1 and Fig. 1. screenweb.com.
//  13. Nittoku / NT, Screen Specifications. nt-jp.com.
//  14. P. Zieba, P. Dul, AGH Krakow, Technical data on investigated fabrics. ftj.agh.edu.pl.
//  15. "Mesh Matters", Screen Printing, June 2009. screenweb.com.
//  16. Catspit Productions, "Thin Mesh". catspitproductionsllc.com.
//  17. "How To Determine The Open Area of Square Woven Mesh". wovenwire.com.
//  18. ISO 9044, industrial woven wire cloth: the terms. Not read in full.
//  19. ASTM E11-01, Table 1.
//  20. Coudray, "All Things Are Not as They Appear", Screen Printing, April 2003.
//  21. J. Clarke, "Stencil Matters". printwearmag.com.
//  22. Printwear, November 2015, p. 73.
//  23. A thick-film printing note, Tw = Tm AO + Te and the width of lines. micrasem.com.
//  24. "Printing 3-D T-shirt designs", trade article.
//  25. Weavers' guidance on line counts and angles: Sefar and others, with 3.75 and 5 to 1.
//  26. Abbott (ed.), How to be a great screen printer, 2008, p. 28.
//  27. Graphics Pro, January 2023, p. 45.
//  28. PrintWiki, "Off-Contact Printing".
//  29. Printwear, March 2015, p. 86.
//  30. Textile Learner, Print-paste viscosity.
//  31. SGIA, 2021: inside of the frame against the blade path.
//  32. Kubelka, Munk, Z. tech. Phys. 12 (1931), 593.
//  33. ISO 6504-1, hiding power of paints. An abstract and a summary were read, not the standard.
//  34. ISO 2814, contrast ratio of paints. A summary was read, not the standard.
//  35. "Calculating Ink Costs", 22 November 2011. internationalcoatings.wordpress.com.
//  36. IEC 61966-2-1, sRGB. Constants from memory.
//  37. CIE 15, colorimetry: L*. Constants from memory.
//  38. A maker of expandable spheres, application guide: densities before and after. scribd.com, document
//     647626299.
//  39. Incropera, DeWitt, Fundamentals of Heat and Mass Transfer, ch. 5, as solved in the notebook
//     Chapter_5.ipynb of FOSSEE, Python Textbook Companions, which is what was read.
//  40. Holman, Heat Transfer, 5th ed., ch. 4, example 4.2, as carried in the verification guide of a
//     simulation program (PTC Creo Simulate, mvtt001).
//  41. Netzsch, PVC-P: Polyvinylchloride with plasticizer, thermal data.
//  42. A dryer builder's article on drying energy: 2256 kJ/kg. yfrheating.cn.
//  43. "Dye Migration", an ink maker's bulletin. scribd.com, document 113053882.
//  44. Performance fabrics, temperature note. paperthermometer.com.
//  45. A garment supplier's article on plastisol: 300 F for synthetic blends.
//  46. Care symbols, iron temperatures. sioen-ppc.com.
//  47. Two trade glossaries. indigoclothing.com, phoenixscreenprinting.com.
//  48. Size and placement guides. freshprintssupply.com, inkandpxl.com, live.ink, printreadypod.com.
//  49. NIST Special Publication 811, 2008 edition, Appendix B; the international yard and pound agreement,
//     1959; 3rd CGPM, 1901.
//  50. Hoerl, Kennard, 1970: ridge regression. From memory.
//  51. Huber, 1964: robust estimation. From memory.
//  52. Abramowitz, Stegun, Handbook of Mathematical Functions, 1964, equation 26.7.5.
//  53. A maker's data of a cast polyurethane of 65 Shore A, quoted second hand.
//  54. Printwear, May 2017, p. 70: plastisol basics.
//  55. Kinter, Controlling Plastisol Ink Waste, PNEAC fact sheet, 2004.
//  56. An ink maker's questions and answers: temperature, cure, flash. iccink.com.
//  57. K. Stevens, "Troubleshooting Part 2", 2018. iccink.com.
//  58. Printwear, September 2017, p. 49: mesh and tension.
//  59. "3 uses for low-cure inks", Graphics Pro.
//  60. R. Davis, "Controlling Variables Part 5", Impressions, 2014.
//  61. Printwear, September 2015, p. 79: inks for performance wear.
//  62. "Puff the magic ink", Images magazine. images-magazine.com.
//  63. Chella Enterprises, Curing plastisol. chellaenterprises.com.
//  64. Discharge thread of a forum. halftoned.com.
//  65. Environmental Review of Screen Printing Methods, p. 22.
//  66. Printwear, June 2015, p. 73: screens for water-based inks.
//  67. Discharge white paper. docest.com, document 9181.
//  68. "Optimize your flash curing", Screen Printing. screenprintingmag.com.
//  69. Silicone ink primer, Graphics Pro. graphics-pro.com.
package calc
