#include "setup/fret_readings.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <set>
#include <tuple>

#include "season/words.h"
#include "setup/fret_limits.h"

namespace tailblock {
namespace {

using Eigen::MatrixXd;
using Eigen::VectorXd;

constexpr double free_line_sd = 100;  // mm; holds the straight line nobody can see, far wider than any reading

/// One linear statement about the crowns of a side, in mm.
struct Statement {
  VectorXd weight;
  double value;
  double sd;
  bool at_most = false;  ///< the weighted sum is not above the value
};

bool says_height(FretReadingKind kind) {
  return kind == FretReadingKind::departure || kind == FretReadingKind::straightedge || kind == FretReadingKind::rocker;
}

bool of_side(const FretReading& reading, FretSide side) {
  return reading.side == FretSide::both || reading.side == side;
}

Eigen::Index at(int fret) { return fret - 1; }

std::vector<double> places(const NeckLine& neck) {
  std::vector<double> x;
  for (int fret = 1; fret <= neck.fret_count; ++fret) x.push_back(in_mm(fret_from_nut(neck.scale_length, fret)));
  return x;
}

void require_on_neck(const FretDressRequest& request) {
  const int last = request.neck.fret_count;
  std::set<std::tuple<FretReadingKind, int, FretSide, int, int>> seen;
  for (const FretReading& reading : request.readings) {
    const std::string kind(fret_reading_kind_names[static_cast<std::size_t>(reading.kind)]);
    const bool rocker = reading.kind == FretReadingKind::rocker;
    require_within("readings: fret", reading.fret, {rocker ? 2.0 : 1.0, double(rocker ? last - 1 : last), ""});
    if (reading.kind == FretReadingKind::straightedge) {
      require_within("readings: from_fret", reading.from_fret, {1, last - 1.0, ""});
      require_within("readings: to_fret", reading.to_fret, {reading.from_fret + 1.0, double(last), ""});
      if (reading.fret == reading.from_fret || reading.fret == reading.to_fret) {
        throw Refused("readings: fret " + std::to_string(reading.fret) + " carries the straightedge, it has no gap");
      }
    }
    const bool once =
        seen.insert({reading.kind, reading.fret, reading.side, reading.from_fret, reading.to_fret}).second;
    if (!once) throw Refused("readings: " + kind + " of fret " + std::to_string(reading.fret) + " is given twice");
  }
}

double usual_sd(FretReadingKind kind, const FretLimits& limits) {
  switch (kind) {
    case FretReadingKind::departure:
      return limits.departure_sd;
    case FretReadingKind::straightedge:
      return limits.straightedge_sd;
    case FretReadingKind::rocker:
      return limits.rocker_sd;
    case FretReadingKind::over_board:
      return limits.over_board_sd;
    case FretReadingKind::springs:
      return limits.springs_sd;
  }
  return limits.departure_sd;
}

/// Weights of the straight line through frets p and q, read at fret n.
void add_line(VectorXd& weight, const std::vector<double>& x, Eigen::Index p, Eigen::Index q, Eigen::Index n) {
  const auto place = [&](Eigen::Index i) { return x[static_cast<std::size_t>(i)]; };
  const double t = (place(n) - place(p)) / (place(q) - place(p));
  weight[p] += 1 - t;
  weight[q] += t;
}

Statement statement_of(const FretReading& reading, const std::vector<double>& x, const VectorXd& bow, double sd) {
  const Eigen::Index n = at(reading.fret);
  Statement said{VectorXd::Zero(bow.size()), in_mm(reading.value), sd};
  if (reading.kind == FretReadingKind::straightedge) {
    add_line(said.weight, x, at(reading.from_fret), at(reading.to_fret), n);
    said.weight[n] -= 1;
  } else if (reading.kind == FretReadingKind::rocker) {
    add_line(said.weight, x, n - 1, n, n + 1);
    said.weight[n + 1] -= 1;
    said.at_most = in_mm(reading.value) <= 0;
  } else {
    said.weight[n] = 1;
    return said;
  }
  said.value -= said.weight.dot(bow);  // the statement is about z = bow + d
  return said;
}

/// Mean and spread of what all statements say together.
struct Said {
  VectorXd mean;
  MatrixXd covariance;
};

Said together(const std::vector<Statement>& statements, Eigen::Index frets) {
  MatrixXd information = MatrixXd::Zero(frets, frets);
  VectorXd pull = VectorXd::Zero(frets);
  for (const Statement& s : statements) {
    if (s.at_most) continue;
    information.noalias() += s.weight * s.weight.transpose() / (s.sd * s.sd);
    pull += s.weight * s.value / (s.sd * s.sd);
  }
  const Eigen::LDLT<MatrixXd> solver(information);
  return {solver.solve(pull), solver.solve(MatrixXd::Identity(frets, frets))};
}

/// A rocker that did not rock binds only when the rest would have it rock.
Said with_bounds(std::vector<Statement> statements, Eigen::Index frets) {
  for (;;) {
    Said said = together(statements, frets);
    Statement* worst = nullptr;
    double worst_over = 1e-9;
    for (Statement& s : statements) {
      const double over = s.at_most ? s.weight.dot(said.mean) - s.value : 0;
      if (over > worst_over) worst = &s, worst_over = over;
    }
    if (worst == nullptr) return said;
    worst->at_most = false;
  }
}

MatrixXd without_straight_line(const std::vector<double>& x) {
  const auto frets = static_cast<Eigen::Index>(x.size());
  MatrixXd line(frets, 2);
  for (Eigen::Index i = 0; i < frets; ++i) line.row(i) << 1, x[static_cast<std::size_t>(i)] / x.back();
  return MatrixXd::Identity(frets, frets) - line * (line.transpose() * line).inverse() * line.transpose();
}

std::vector<Statement> statements_of(const FretDressRequest& request, FretSide side, const FretLimits& limits,
                                     const std::vector<double>& x, const VectorXd& bow, bool by_board) {
  const auto frets = static_cast<Eigen::Index>(x.size());
  std::vector<Statement> statements;
  for (const FretReading& reading : request.readings) {
    if (!of_side(reading, side)) continue;
    if (!says_height(reading.kind) && !(by_board && reading.kind == FretReadingKind::over_board)) continue;
    double sd = reading.sd ? in_mm(*reading.sd) : usual_sd(reading.kind, limits);
    if (reading.kind == FretReadingKind::over_board) sd = std::hypot(sd, limits.board_true_sd);
    statements.push_back(statement_of(reading, x, bow, sd));
  }
  for (Eigen::Index n = 1; n + 1 < frets; ++n) {
    Statement near_neighbours{VectorXd::Zero(frets), 0, limits.unread_bend};
    add_line(near_neighbours.weight, x, n - 1, n + 1, n);
    near_neighbours.weight[n] -= 1;
    statements.push_back(near_neighbours);
  }
  for (const Eigen::Index held : {Eigen::Index{0}, at(request.neck.body_joint_fret)}) {
    Statement line{VectorXd::Zero(frets), 0, free_line_sd};
    line.weight[held] = 1;
    statements.push_back(line);
  }
  return statements;
}

void mark_read(CrownSide& crowns, const FretReading& reading, bool by_board) {
  const auto mark = [&](int fret) { crowns.read[static_cast<std::size_t>(at(fret))] = true; };
  if (reading.kind == FretReadingKind::over_board && by_board) mark(reading.fret);
  if (!says_height(reading.kind)) return;
  mark(reading.fret);
  if (reading.kind == FretReadingKind::straightedge) mark(reading.from_fret), mark(reading.to_fret);
  if (reading.kind == FretReadingKind::rocker) mark(reading.fret - 1), mark(reading.fret + 1);
}

CrownSide side_of(const FretDressRequest& request, FretSide side, const FretLimits& limits,
                  const std::vector<double>& x, const VectorXd& bow, bool by_board) {
  const std::size_t frets = x.size();
  const Said said =
      with_bounds(statements_of(request, side, limits, x, bow, by_board), static_cast<Eigen::Index>(frets));
  const MatrixXd project = without_straight_line(x);
  const MatrixXd covariance = project * said.covariance * project.transpose();
  CrownSide crowns{.departure = {said.mean.begin(), said.mean.end()},
                   .covariance = {covariance.data(), covariance.data() + covariance.size()},
                   .read = std::vector<bool>(frets),
                   .over_board = std::vector<std::optional<double>>(frets),
                   .springs = std::vector<double>(frets),
                   .loose = std::vector<bool>(frets)};
  for (const FretReading& reading : request.readings) {
    if (!of_side(reading, side)) continue;
    const auto i = static_cast<std::size_t>(at(reading.fret));
    mark_read(crowns, reading, by_board);
    if (reading.kind == FretReadingKind::over_board) crowns.over_board[i] = in_mm(reading.value);
    if (reading.kind != FretReadingKind::springs) continue;
    const double sd = reading.sd ? in_mm(*reading.sd) : limits.springs_sd;
    crowns.springs[i] = in_mm(reading.value);
    crowns.loose[i] = in_mm(reading.value) > std::max(limits.springs_most, limits.withheld_within_sd * sd);
    if (crowns.loose[i]) crowns.departure[i] -= crowns.springs[i];
  }
  return crowns;
}

/// Relief of the parabola that fits the crowns up to the joint best, and the departures over that one.
double fit_relief(const std::vector<double>& x, int joint, const VectorXd& unit_bow, const std::vector<double>& z) {
  MatrixXd shape(joint, 3);
  VectorXd height(joint);
  for (Eigen::Index i = 0; i < joint; ++i) {
    shape.row(i) << 1, x[static_cast<std::size_t>(i)] / x.back(), unit_bow[i];
    height[i] = z[static_cast<std::size_t>(i)];
  }
  return shape.colPivHouseholderQr().solve(height)[2];
}

std::string frets_in_words(const std::vector<int>& frets) {
  std::string text;
  for (std::size_t i = 0; i < frets.size(); ++i) {
    text += (i == 0 ? "" : i + 1 == frets.size() ? " and " : ", ") + std::to_string(frets[i]);
  }
  return (frets.size() == 1 ? "fret " : "frets ") + text;
}

void say_what_was_not_read(Crowns& crowns, bool by_board) {
  std::vector<int> unread;
  for (std::size_t i = 0; i < crowns.bass.read.size(); ++i) {
    if (!crowns.bass.read[i] || !crowns.treble.read[i]) unread.push_back(static_cast<int>(i) + 1);
  }
  if (!unread.empty()) {
    crowns.cautions.push_back("Nobody read " + frets_in_words(unread) +
                              ": the line of the neighbours stands in. Read before anything is filed there.");
  }
  if (by_board) {
    crowns.cautions.emplace_back(
        "Only heights over the board were read, so the board is taken to follow the neck's bow. A board that is not "
        "true "
        "makes level frets look uneven, and uneven ones level: lay a straightedge on the crowns before filing.");
  }
}

}  // namespace

double CrownSide::variance(const std::vector<double>& weight) const {
  const std::size_t frets = departure.size();
  double sum = 0;
  for (std::size_t i = 0; i < frets; ++i) {
    for (std::size_t k = 0; k < frets; ++k) sum += weight[i] * covariance[i * frets + k] * weight[k];
  }
  return std::max(sum, 0.0);
}

double CrownSide::sd(std::size_t i) const { return std::sqrt(std::max(covariance[i * departure.size() + i], 0.0)); }

Crowns crowns_from_readings(const FretDressRequest& request, const FretLimits& limits) {
  require_on_neck(request);
  const auto any_reading = [&](auto what) { return std::ranges::any_of(request.readings, what); };
  const bool by_line = any_reading([](const FretReading& r) {
    return r.kind == FretReadingKind::straightedge || r.kind == FretReadingKind::rocker;
  });
  const bool by_departure = any_reading([](const FretReading& r) { return r.kind == FretReadingKind::departure; });
  const bool by_board = !by_line && !by_departure;
  if (by_board && !any_reading([](const FretReading& r) { return r.kind == FretReadingKind::over_board; })) {
    throw Refused("readings: none says how high a crown is; springs alone do not");
  }
  Crowns crowns;
  crowns.apart = any_reading([](const FretReading& r) { return r.side != FretSide::both; });

  NeckLine bowed = request.neck;
  bowed.relief = mm(1);
  const std::vector<double> x = places(request.neck);
  VectorXd unit_bow(static_cast<Eigen::Index>(x.size()));
  const std::vector<Length> of_one = crowns_over_plane(bowed);
  for (std::size_t i = 0; i < x.size(); ++i) unit_bow[static_cast<Eigen::Index>(i)] = in_mm(of_one[i]);
  const double relief = in_mm(request.neck.relief);

  crowns.bass = side_of(request, FretSide::bass, limits, x, relief * unit_bow, by_board);
  crowns.treble =
      crowns.apart ? side_of(request, FretSide::treble, limits, x, relief * unit_bow, by_board) : crowns.bass;
  crowns.relief = request.neck.relief;
  if (by_line && !by_departure) {
    std::vector<double> middle;
    for (std::size_t i = 0; i < x.size(); ++i) {
      middle.push_back((crowns.bass.departure[i] + crowns.treble.departure[i]) / 2 +
                       relief * unit_bow[static_cast<Eigen::Index>(i)]);
    }
    const double fitted = fit_relief(x, request.neck.body_joint_fret, unit_bow, middle);
    for (std::size_t i = 0; i < x.size(); ++i) {
      const double less = (relief - fitted) * unit_bow[static_cast<Eigen::Index>(i)];
      crowns.bass.departure[i] += less;
      crowns.treble.departure[i] += less;
    }
    crowns.relief = mm(fitted);
  }
  say_what_was_not_read(crowns, by_board);
  return crowns;
}

}  // namespace tailblock
