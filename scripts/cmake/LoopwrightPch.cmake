# Precompiled headers, off by default: they spare about half of a build from nothing, but ccache serves files without
# them better. scripts/lib/build.sh turns them on for a first build where there is no filled cache. What compiles without them compiles
# with them; the other builds keep every file's own includes honest.
option(LOOPWRIGHT_PCH "Precompile the headers that most files of the desktop and the tests read" OFF)

# loopwright_pch(target ui|test): the target's files read the list of that name first.
function(loopwright_pch target list)
  if(NOT LOOPWRIGHT_PCH OR NOT TARGET ${target})
    return()
  endif()
  set(core <algorithm> <cmath> <complex> <functional> <memory> <optional> <string> <vector>
      "${CMAKE_SOURCE_DIR}/src/units/quantities.hpp")
  set(test <gtest/gtest.h> <algorithm> <cmath> <string> <vector>
      "${CMAKE_SOURCE_DIR}/src/units/quantities.hpp" "${CMAKE_SOURCE_DIR}/src/design/design.hpp")
  set(ui <QComboBox> <QDialog> <QGridLayout> <QLabel> <QLineEdit> <QMainWindow> <QPainter> <QTableView> <QToolButton>
      <QVBoxLayout> <functional> <memory> "${CMAKE_SOURCE_DIR}/src/survey/survey.hpp")
  target_precompile_headers(${target} PRIVATE ${${list}})
endfunction()

# loopwright_pch_of_core(target folder): the libraries above units/ read the header that units/ made, once for all.
function(loopwright_pch_of_core target folder)
  if(NOT LOOPWRIGHT_PCH OR folder MATCHES "^(base|numeric)$")
    return()
  endif()
  if(folder STREQUAL "units")
    loopwright_pch(${target} core)
  else()
    target_precompile_headers(${target} REUSE_FROM loopwright_units)
  endif()
endfunction()
