# Builds from nothing, off by default: the core compiles several files of a folder as one unit, desktop and tests read
# their common headers precompiled. The everyday build keeps every file's own includes honest; docs/decisions/0006-build.md
# says when scripts/lib/build.sh turns this on.
option(LOOPWRIGHT_QUICK "Join files of the core, precompile headers of the desktop and the tests" OFF)

set(loopwright_pch_ui <QComboBox> <QDialog> <QGridLayout> <QLabel> <QLineEdit> <QMainWindow> <QPainter> <QTableView>
    <QToolButton> <QVBoxLayout> <functional> <memory> "${CMAKE_SOURCE_DIR}/src/survey/survey.hpp")
set(loopwright_pch_test <gtest/gtest.h> <gmock/gmock.h> <nlohmann/json.hpp> <algorithm> <cmath> <string> <vector>
    "${CMAKE_SOURCE_DIR}/src/units/quantities.hpp" "${CMAKE_SOURCE_DIR}/src/design/design.hpp")
set(loopwright_pch_program_test <gtest/gtest.h> <gmock/gmock.h> <nlohmann/json.hpp> <string> <vector>)
set(loopwright_pch_ui_test <gtest/gtest.h> <gmock/gmock.h> ${loopwright_pch_ui})

# loopwright_pch(target ui|test|ui_test|program_test): the target's files read the headers of that list first.
function(loopwright_pch target list)
  if(LOOPWRIGHT_QUICK)
    target_precompile_headers(${target} PRIVATE ${loopwright_pch_${list}})
  endif()
endfunction()

# loopwright_pch_as(target other): reads what `other` precompiled; both need the same options and definitions.
function(loopwright_pch_as target other)
  if(LOOPWRIGHT_QUICK)
    target_precompile_headers(${target} REUSE_FROM ${other})
  endif()
endfunction()

# loopwright_joined(target): files of the target compile eight at a time. Files with options of their own stay alone.
function(loopwright_joined target)
  if(LOOPWRIGHT_QUICK)
    set_target_properties(${target} PROPERTIES UNITY_BUILD ON UNITY_BUILD_BATCH_SIZE 8)
  endif()
endfunction()
