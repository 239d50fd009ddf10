# An independent twin of the statistics in base R, written from the formulas of the statistics page and not from the code:
# sums, ranks and matrices as R has them, patients left out one by one, all differences formed.
#
#   Rscript test/study/twin.R eyes.csv results.csv
#
# eyes.csv     set, measure, kind, cohort (compared, reference or blank), patient, value, second, further covariates
# results.csv  set, measure, group, statistic, part, number

paths <- commandArgs(trailingOnly = TRUE)
eyes <- read.csv(paths[1], colClasses = c(patient = "character", cohort = "character", surgeon = "character"))
level <- 0.95
found <- list()
tell <- function(at, group, statistic, part, number) {
  found[[length(found) + 1]] <<- data.frame(
    set = at$set, measure = at$measure, group = group, statistic = statistic, part = part,
    number = sprintf("%.17g", number)
  )
}
tell_interval <- function(at, group, statistic, three) {
  for (i in 1:3) tell(at, group, statistic, c("value", "ci_low", "ci_high")[i], three[i])
}

# --- one group ---------------------------------------------------------------------------------------------------------

t_of <- function(patients) qt((1 + level) / 2, length(unique(patients)) - 1)
mean_variance <- function(y, patients) {
  u <- tapply(y - mean(y), patients, sum) / length(y)
  length(u) / (length(u) - 1) * sum(u^2)
}
mean_interval <- function(y, patients) {
  mean(y) + c(0, -1, 1) * t_of(patients) * sqrt(mean_variance(y, patients))
}
mae_interval <- function(e, patients) {
  m <- mean(abs(e))
  m * exp(c(0, -1, 1) * t_of(patients) * sqrt(mean_variance(abs(e), patients)) / m)
}
mean_size <- function(patients) sum(table(patients)^2) / length(patients)
anova_icc <- function(y, patients) {
  tab <- anova(lm(y ~ factor(patients)))
  G <- length(unique(patients))
  m0 <- (length(y) - mean_size(patients)) / (G - 1)
  (tab[1, 3] - tab[2, 3]) / (tab[1, 3] + (m0 - 1) * tab[2, 3])
}
bilateral <- function(patients) sum(table(patients) > 1)
deff_of <- function(hits, patients, whole) {
  if (bilateral(patients) == 0) return(1)
  icc <- if (bilateral(patients) >= 5) anova_icc(hits, patients) else whole
  if (is.na(icc)) return(mean_size(patients))
  max(1, 1 + (mean_size(patients) - 1) * max(0, icc))
}
score <- function(x, n, z) {
  p <- x / n
  (p + z^2 / (2 * n) + c(-1, 1) * z * sqrt(p * (1 - p) / n + z^2 / (4 * n^2))) / (1 + z^2 / n)
}
share_interval <- function(hits, patients, whole, exact = FALSE) {
  n <- length(hits)
  p <- mean(hits)
  size <- if (p == 0 || p == 1) length(unique(patients)) else n / deff_of(hits, patients, whole)
  x <- p * size
  tail <- (1 - level) / 2
  limits <- if (exact) {
    c(if (x == 0) 0 else qbeta(tail, x, size - x + 1), if (p == 1) 1 else qbeta(1 - tail, x + 1, size - x))
  } else pmin(1, pmax(0, score(x, size, qnorm(1 - tail))))
  c(p, limits)
}
median_interval <- function(y, patients, whole) {
  middle <- median(y)
  n <- length(y) / deff_of(as.numeric(y <= middle), patients, whole)
  c(middle, quantile(y, score(n / 2, n, t_of(patients)), type = 7, names = FALSE))
}
without_each <- function(y, patients, statistic) {
  sapply(unique(patients), function(g) log(statistic(y[patients != g])))
}
spread_interval <- function(y, patients, statistic) {
  l <- without_each(y, patients, statistic)
  G <- length(l)
  jackknife <- (G - 1) / G * sum((l - mean(l))^2)
  icc <- if (bilateral(patients) > 0) max(0, anova_icc(y, patients)) else 0
  normal <- (1 + (mean_size(patients) - 1) * icc^2) / (2 * (length(y) - 1))
  statistic(y) * exp(c(0, -1, 1) * t_of(patients) * sqrt(max(jackknife, normal)))
}
rms <- function(y) sqrt(mean(y^2))
plane <- function(V, k) {
  e <- eigen(V, symmetric = TRUE)
  tilt <- atan2(e$vectors[2, 1], e$vectors[1, 1]) * 180 / pi
  c(major = sqrt(k * e$values[1]), minor = sqrt(k * e$values[2]), angle = (tilt + 90) %% 180 - 90)
}
centroid_of <- function(v, patients) {
  u <- rowsum(sweep(v, 2, colMeans(v)), patients) / nrow(v)
  G <- nrow(u)
  V <- G / (G - 1) * crossprod(u)
  scale <- 2 * (G - 1) / (G - 2)
  T2 <- mahalanobis(colMeans(v), c(0, 0), V)
  list(at = colMeans(v), region = plane(V, scale * qf(level, 2, G - 2)), T2 = T2,
    p = pf(T2 / scale, 2, G - 2, lower.tail = FALSE))
}

# --- two cohorts -------------------------------------------------------------------------------------------------------

# V = sum of w squared over patients, split by who is in which cohort; a and b are sums over a patient's eyes, by name.
contrast <- function(a, b) {
  GA <- NROW(a)
  GB <- NROW(b)
  a <- sqrt(GA / (GA - 1)) * as.matrix(a)
  b <- sqrt(GB / (GB - 1)) * as.matrix(b)
  both <- intersect(rownames(a), rownames(b))
  only_a <- setdiff(rownames(a), both)
  only_b <- setdiff(rownames(b), both)
  parts <- list(
    list(V = crossprod(a[only_a, , drop = FALSE]), f = length(only_a) * (1 - 1 / GA)),
    list(V = crossprod(b[only_b, , drop = FALSE]), f = length(only_b) * (1 - 1 / GB)),
    list(V = crossprod(a[both, , drop = FALSE] - b[both, , drop = FALSE]),
      f = length(both) * (1 - 1 / (2 * GA) - 1 / (2 * GB)))
  )
  parts <- Filter(function(part) part$f > 0, parts)
  V <- Reduce(`+`, lapply(parts, function(part) part$V))
  list(V = V, parts = parts, patients = length(both) + length(only_a) + length(only_b),
    df = if (length(V) == 1) V[1]^2 / sum(sapply(parts, function(part) part$V[1]^2 / part$f)))
}
t_test <- function(estimate, contrasted, null = 0) {
  se <- sqrt(contrasted$V[1])
  list(three = estimate + c(0, -1, 1) * qt((1 + level) / 2, contrasted$df) * se,
    p = 2 * pt(-abs(estimate - null) / se, contrasted$df), df = contrasted$df)
}
mean_psi <- function(y, patients) rowsum((y - mean(y)) / length(y), patients)
mean_difference <- function(a, b) t_test(mean(a$y) - mean(b$y), contrast(mean_psi(a$y, a$g), mean_psi(b$y, b$g)))
sd_psi <- function(y, patients) {
  l <- without_each(y, patients, sd)
  G <- length(l)
  matrix((G - 1) / G * (mean(l) - l), dimnames = list(unique(patients), NULL))
}
sd_ratio <- function(a, b) {
  log_scale <- t_test(log(sd(a$y) / sd(b$y)), contrast(sd_psi(a$y, a$g), sd_psi(b$y, b$g)))
  modifyList(log_scale, list(three = exp(log_scale$three)))
}
placed <- function(y, other) sapply(y, function(one) mean(other < one) + mean(other == one) / 2)
effect_contrast <- function(ya, ga, yb, gb) contrast(mean_psi(placed(ya, yb), ga), mean_psi(placed(yb, ya), gb))
relative_effect <- function(a, b) {
  found <- t_test(mean(placed(a$y, b$y)), effect_contrast(a$y, a$g, b$y, b$g), null = 0.5)
  modifyList(found, list(three = pmin(1, pmax(0, found$three))))
}
shift_of <- function(a, b) {
  all <- outer(a$y, b$y, "-")
  middle <- median(all)
  aligned <- effect_contrast(round(a$y - middle, 9), a$g, round(b$y, 9), b$g)
  half <- min(0.5, qt((1 + level) / 2, aligned$df) * sqrt(aligned$V[1]))
  c(middle, quantile(all, 0.5 + c(-1, 1) * half, type = 7, names = FALSE))
}
risk_difference <- function(a, b, whole) {
  A <- share_interval(a$y, a$g, whole)
  B <- share_interval(b$y, b$g, whole)
  pa <- mean_psi(a$y, a$g)
  pb <- mean_psi(b$y, b$g)
  both <- intersect(rownames(pa), rownames(pb))
  r <- sum(pa[both, 1] * pb[both, 1]) / sqrt(sum(pa^2) * sum(pb^2))
  root <- function(x, y) sqrt(max(0, x^2 - 2 * r * x * y + y^2))
  d <- A[1] - B[1]
  c(d, max(-1, d - root(A[1] - A[2], B[3] - B[1])), min(1, d + root(A[3] - A[1], B[1] - B[2])))
}
risk_ratio <- function(a, b) {
  both <- contrast(mean_psi(a$y, a$g) / mean(a$y), mean_psi(b$y, b$g) / mean(b$y))
  exp(t_test(log(mean(a$y) / mean(b$y)), both)$three)
}
centroid_difference <- function(va, ga, vb, gb) {
  psi <- function(v, g) rowsum(sweep(v, 2, colMeans(v)) / nrow(v), g)
  both <- contrast(psi(va, ga), psi(vb, gb))
  d <- colMeans(va) - colMeans(vb)
  trace <- function(M) sum(diag(M))
  nu <- 6 / sum(sapply(both$parts, function(part) {
    M <- part$V %*% solve(both$V)
    (trace(M %*% M) + trace(M)^2) / part$f
  }))
  T2 <- mahalanobis(d, c(0, 0), both$V)
  list(d = d, T2 = T2, df = nu - 1, p = pf((nu - 1) / (2 * nu) * T2, 2, nu - 1, lower.tail = FALSE),
    region = plane(both$V, 2 * nu / (nu - 1) * qf(level, 2, nu - 1)))
}
adjusted <- function(y, eyes) {
  is_compared <- as.numeric(eyes$cohort == "compared")
  X <- model.matrix(~ is_compared + eyes$axial_length + eyes$age + factor(eyes$surgeon))
  fit <- lm.fit(X, y)
  psi <- (X %*% solve(crossprod(X)))[, 2] * fit$residuals
  of <- function(which, sign) rowsum(sign * psi[is_compared == which], eyes$patient[is_compared == which])
  both <- contrast(of(1, 1), of(0, -1))
  q <- ncol(X) - 2
  se <- sqrt(both$V[1] * (both$patients - 2) / (both$patients - 2 - q))
  df <- max(1, both$df - q)
  d <- fit$coefficients[[2]]
  list(three = d + c(0, -1, 1) * qt((1 + level) / 2, df) * se, p = 2 * pt(-abs(d) / se, df), df = df)
}

# --- what the report shows ---------------------------------------------------------------------------------------------

within <- function(y, limit) as.numeric(round(abs(y) * 1e6) <= round(limit * 1e6))
limits <- c("0.25", "0.50", "0.75", "1.00")
groups_of <- function(eyes) list(all = eyes, compared = eyes[eyes$cohort == "compared", ],
  reference = eyes[eyes$cohort == "reference", ])
cohort_of <- function(y, eyes) list(y = y, g = eyes$patient)
tell_test <- function(at, statistic, test) {
  tell(at, "both", paste0("p:", statistic), "value", test$p)
  tell(at, "both", paste0("df:", statistic), "value", test$df)
}
tell_compared <- function(at, statistic, test) {
  tell_interval(at, "both", statistic, test$three)
  tell_test(at, statistic, test)
}

tell_errors <- function(eyes) {
  at <- eyes[1, ]
  for (name in names(groups <- groups_of(eyes))) {
    y <- groups[[name]]$value
    g <- groups[[name]]$patient
    tell_interval(at, name, "mean", mean_interval(y, g))
    tell_interval(at, name, "sd", spread_interval(y, g, sd))
    tell_interval(at, name, "root_mean_square", spread_interval(y, g, rms))
    tell_interval(at, name, "median", median_interval(y, g, NA))
    tell_interval(at, name, "mean_absolute", mae_interval(y, g))
    tell_interval(at, name, "median_absolute", median_interval(abs(y), g, NA))
    tell(at, name, "icc", "value", anova_icc(y, g))
    for (limit in limits) {
      hits <- within(y, as.numeric(limit))
      tell_interval(at, name, paste0("share_within_", limit), share_interval(hits, g, NA))
    }
  }
  A <- groups$compared
  B <- groups$reference
  tell_compared(at, "difference_mean", mean_difference(cohort_of(A$value, A), cohort_of(B$value, B)))
  tell_compared(at, "ratio_sd", sd_ratio(cohort_of(A$value, A), cohort_of(B$value, B)))
  sizes <- list(cohort_of(abs(A$value), A), cohort_of(abs(B$value), B))
  tell_compared(at, "relative_effect_absolute", relative_effect(sizes[[1]], sizes[[2]]))
  tell_interval(at, "both", "shift_absolute", shift_of(sizes[[1]], sizes[[2]]))
  for (limit in limits) {
    a <- cohort_of(within(A$value, as.numeric(limit)), A)
    b <- cohort_of(within(B$value, as.numeric(limit)), B)
    name <- paste0("share_within_", limit)
    tell_interval(at, "both", paste0("difference_", name), risk_difference(a, b, NA))
    tell_test(at, paste0("difference_", name), mean_difference(a, b))
    tell_interval(at, "both", paste0("ratio_", name), risk_ratio(a, b))
  }
  known <- eyes[eyes$cohort != "" & !is.na(eyes$axial_length) & !is.na(eyes$age) & eyes$surgeon != "", ]
  tell_compared(at, "adjusted_difference_mean", adjusted(known$value, known))
  hits <- within(known$value, 0.5)
  tell_compared(at, "adjusted_difference_share_within_0.50", adjusted(hits, known))
}

tell_shares <- function(eyes) {
  whole <- if (bilateral(eyes$patient) >= 5) anova_icc(eyes$value, eyes$patient) else NA
  for (name in names(groups <- groups_of(eyes))) {
    tell_interval(eyes[1, ], name, "share", share_interval(groups[[name]]$value, groups[[name]]$patient, whole, TRUE))
  }
}

tell_means <- function(eyes) {
  for (name in names(groups <- groups_of(eyes))) {
    tell_interval(eyes[1, ], name, "mean", mean_interval(groups[[name]]$value, groups[[name]]$patient))
  }
  A <- groups$compared
  B <- groups$reference
  tell_compared(eyes[1, ], "difference_mean", mean_difference(cohort_of(A$value, A), cohort_of(B$value, B)))
}

tell_vectors <- function(eyes) {
  at <- eyes[1, ]
  v <- function(of) cbind(of$value, of$second)
  for (name in names(groups <- groups_of(eyes))) {
    one <- centroid_of(v(groups[[name]]), groups[[name]]$patient)
    tell(at, name, "centroid_x", "value", one$at[1])
    tell(at, name, "centroid_y", "value", one$at[2])
    for (part in names(one$region)) tell(at, name, paste0("centroid_ellipse_", part), "value", one$region[[part]])
    tell(at, name, "hotelling_t2", "value", one$T2)
    tell(at, name, "p", "value", one$p)
  }
  two <- centroid_difference(v(groups$compared), groups$compared$patient, v(groups$reference), groups$reference$patient)
  tell(at, "both", "difference_x", "value", two$d[1])
  tell(at, "both", "difference_y", "value", two$d[2])
  for (part in names(two$region)) tell(at, "both", paste0("difference_ellipse_", part), "value", two$region[[part]])
  tell(at, "both", "t2:difference_centroid", "value", two$T2)
  tell_test(at, "difference_centroid", two)
}

# --- textbook forms, by R's own functions ------------------------------------------------------------------------------

# One eye a patient: one-sample t, Wilson by prop.test, Welch.
tell_singles <- function(eyes) {
  at <- eyes[1, ]
  for (name in names(groups <- groups_of(eyes))) {
    y <- groups[[name]]$value
    tell_interval(at, name, "mean", c(mean(y), t.test(y)$conf.int))
    hits <- within(y, 0.5)
    tell_interval(at, name, "share_within_0.50", c(mean(hits), prop.test(sum(hits), length(y), correct = FALSE)$conf.int))
  }
  welch <- t.test(groups$compared$value, groups$reference$value)
  means <- unname(welch$estimate)
  tell_compared(at, "difference_mean", list(three = c(means[1] - means[2], welch$conf.int), p = welch$p.value,
    df = welch$parameter))
}

# Both eyes, one in each cohort, in one order of patients: paired t, paired Hotelling by R's own analysis of variance.
tell_fellows <- function(eyes) {
  at <- eyes[1, ]
  groups <- lapply(groups_of(eyes), function(one) one[order(one$patient), ])
  d <- groups$compared$value - groups$reference$value
  if (at$kind != "vector") {
    paired <- t.test(groups$compared$value, groups$reference$value, paired = TRUE)
    return(tell_compared(at, "difference_mean", list(three = c(mean(d), paired$conf.int), p = paired$p.value,
      df = paired$parameter)))
  }
  both <- cbind(d, groups$compared$second - groups$reference$second)
  wilks <- anova(lm(both ~ 1), test = "Hotelling-Lawley")
  tell(at, "both", "t2:difference_centroid", "value", wilks[1, "Hotelling-Lawley"] * (nrow(both) - 1))
  tell(at, "both", "p:difference_centroid", "value", wilks[1, "Pr(>F)"])
}

for (part in split(eyes, paste(eyes$set, eyes$measure))) {
  teller <- switch(part$set[1], singles = tell_singles, fellows = tell_fellows,
    list(error = tell_errors, share = tell_shares, mean = tell_means, vector = tell_vectors)[[part$kind[1]]])
  teller(part)
}
write.csv(do.call(rbind, found), paths[2], row.names = FALSE, quote = FALSE)
