# The same work in R, as vectors: Rscript others.R WHAT FILE. Prints the processor's seconds of the work alone, and a
# figure of the result. Reading the file and starting R do not count.
arguments <- commandArgs(trailingOnly = TRUE)
what <- arguments[1]
data <- as.matrix(read.csv(arguments[2], header = FALSE))

runs <- function(flags, width, least = width) {
  sums <- cumsum(flags)
  n <- length(flags)
  if (n < width) return(0)
  moved <- sums[width:n] - c(0, sums[seq_len(n - width)])
  sum(moved >= least)
}

chart <- function() {
  x <- data[, 1]
  sigma <- mean(abs(diff(x))) / (2 / sqrt(pi))
  z <- (x - mean(x)) / sigma
  up <- diff(x) > 0
  down <- diff(x) < 0
  turn <- (up[-1] & down[-length(down)]) | (down[-1] & up[-length(up)])
  beyond <- sum(abs(z) > 3)
  others <- runs(z > 0, 9) + runs(z < 0, 9) + runs(up, 5) + runs(down, 5) + runs(turn, 12) +
    runs(z > 2, 3, 2) + runs(z < -2, 3, 2) + runs(z > 1, 5, 4) + runs(z < -1, 5, 4) +
    runs(abs(z) < 1, 15) + runs(abs(z) > 1, 8)
  stopifnot(is.finite(others))
  beyond
}

fisher <- function() {
  total <- 0
  for (i in seq_len(nrow(data))) {
    total <- total + fisher.test(matrix(data[i, ], 2), conf.int = FALSE)$p.value
  }
  total
}

firth <- function() {
  x <- cbind(1, data[, 1])
  y <- data[, 2]
  b <- c(0, 0)
  for (i in 1:50) {
    p <- 1 / (1 + exp(-drop(x %*% b)))
    w <- p * (1 - p)
    information <- crossprod(x, w * x)
    inverse <- solve(information)
    h <- w * rowSums((x %*% inverse) * x)
    step <- drop(inverse %*% crossprod(x, y - p + h * (0.5 - p)))
    b <- b + step
    if (max(abs(step)) < 1e-10) break
  }
  b[2]
}

change <- function() {
  x <- data[, 1]
  n <- length(x)
  k <- seq_len(n - 1)
  largest <- function(v) {
    s <- cumsum(v - mean(v))[k]
    max(s * s * n / (k * (n - k)))
  }
  seen <- largest(x)
  set.seed(1)
  as_large <- 0
  for (i in 1:999) as_large <- as_large + (largest(sample(x)) >= seen)
  s <- cumsum(x - mean(x))[k]
  which.max(s * s * n / (k * (n - k)))
}

work <- switch(what, chart = chart, fisher = fisher, firth = firth, change = change)
time <- system.time(figure <- work(), gcFirst = TRUE)
seconds <- time[["user.self"]] + time[["sys.self"]]
cat(sprintf("%.6f %.12g\n", seconds, figure))
