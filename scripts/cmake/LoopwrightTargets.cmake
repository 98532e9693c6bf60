# One place for what every target shares: language, warnings, sanitizers, and the two helpers that
# turn a folder into a library or a test program.

set(CMAKE_CXX_STANDARD 20)
set(CMAKE_CXX_STANDARD_REQUIRED ON)
set(CMAKE_CXX_EXTENSIONS OFF)
set(CMAKE_EXPORT_COMPILE_COMMANDS ON)

if(NOT CMAKE_BUILD_TYPE)
  set(CMAKE_BUILD_TYPE Release CACHE STRING "" FORCE)
endif()

# Paths in objects are relative to the source tree: two clones build the same object, so ccache serves both.
add_compile_options("-ffile-prefix-map=${CMAKE_SOURCE_DIR}=.")
find_program(CCACHE_PROGRAM ccache) # with precompiled headers it serves only when told that they are no surprise
if(CCACHE_PROGRAM AND NOT CMAKE_CXX_COMPILER_LAUNCHER)
  set(CMAKE_CXX_COMPILER_LAUNCHER "${CMAKE_COMMAND}" -E env "CCACHE_BASEDIR=${CMAKE_SOURCE_DIR}"
      "CCACHE_SLOPPINESS=pch_defines,time_macros" "${CCACHE_PROGRAM}")
endif()

find_program(LLD_PROGRAM ld.lld)
if(LLD_PROGRAM)
  add_link_options(-fuse-ld=lld)
endif()

add_library(loopwright_options INTERFACE)
target_compile_options(loopwright_options INTERFACE -Wall -Wextra -Wconversion -Werror)
# Where files are joined a name may hide that of a neighbour; the everyday build warns of a file's own.
target_compile_options(loopwright_options INTERFACE $<$<NOT:$<BOOL:$<TARGET_PROPERTY:UNITY_BUILD>>>:-Wshadow>)
if(CMAKE_CXX_COMPILER_ID STREQUAL "GNU" AND CMAKE_CXX_COMPILER_VERSION VERSION_LESS 13)
  # GCC 12 takes "text" + std::string for an overlapping copy at -O2 and above (GCC bug 105651).
  target_compile_options(loopwright_options INTERFACE -Wno-restrict)
  # At -O3 it takes the text of a std::variant that holds none for uninitialised, wrongly; the
  # everyday and the sanitized build keep that warning.
  target_compile_options(loopwright_options INTERFACE $<$<CONFIG:Release>:-Wno-maybe-uninitialized>)
  if(LOOPWRIGHT_QUICK) # the same bug in the guise of other warnings, where <string> comes precompiled
    target_compile_options(loopwright_options INTERFACE -Wno-stringop-overflow -Wno-array-bounds)
  endif()
elseif(CMAKE_CXX_COMPILER_ID STREQUAL "Clang")
  # Only there is signedness a part of -Wconversion, and a want of `&&` seen in checks that shall all be made.
  target_compile_options(loopwright_options INTERFACE -Wno-sign-conversion -Wno-bitwise-instead-of-logical)
endif()
# The binary runs on the machine it was built for or one of the same family; no -ffast-math: NaN checks matter.
if(LOOPWRIGHT_SANITIZE)
  target_compile_options(loopwright_options INTERFACE -fsanitize=address,undefined -fno-sanitize-recover=all
                                                      -fno-omit-frame-pointer)
  # GCC's manual: with -fsanitize the optimiser loses track and warns of optionals that hold nothing.
  target_compile_options(loopwright_options INTERFACE $<$<CXX_COMPILER_ID:GNU>:-Wno-maybe-uninitialized>)
  target_link_options(loopwright_options INTERFACE -fsanitize=address,undefined)
endif()

# Under CI most of the core's tests are built and run once, sanitized; everybody else's scripts/test runs all in both builds.
set(LOOPWRIGHT_CORE_TESTS all CACHE STRING "all, or the folders of the core whose tests are built")

# loopwright_library(folder DEPENDS other folders... LIBRARIES external targets...)
# src/<folder>/*.cpp and src/<folder>/detail/*.cpp become the static library loopwright_<folder>.
function(loopwright_library folder)
  cmake_parse_arguments(arg "" "" "DEPENDS;LIBRARIES;PRIVATE_LIBRARIES" ${ARGN})
  file(GLOB sources CONFIGURE_DEPENDS "${CMAKE_SOURCE_DIR}/src/${folder}/*.cpp"
       "${CMAKE_SOURCE_DIR}/src/${folder}/detail/*.cpp")
  list(TRANSFORM arg_DEPENDS PREPEND loopwright_ OUTPUT_VARIABLE depends)
  if(sources)
    add_library(loopwright_${folder} STATIC ${sources})
    target_include_directories(loopwright_${folder} PUBLIC "${CMAKE_SOURCE_DIR}/src")
    target_link_libraries(loopwright_${folder} PUBLIC ${depends} ${arg_LIBRARIES} PRIVATE loopwright_options
                                               ${arg_PRIVATE_LIBRARIES})
    loopwright_joined(loopwright_${folder})
  else()
    add_library(loopwright_${folder} INTERFACE)
    target_include_directories(loopwright_${folder} INTERFACE "${CMAKE_SOURCE_DIR}/src")
    target_link_libraries(loopwright_${folder} INTERFACE ${depends} ${arg_LIBRARIES})
  endif()
endfunction()

# loopwright_test(folder LIBRARIES targets...): tests/<folder>/*.cpp become the program test_<folder>.
function(loopwright_test folder)
  cmake_parse_arguments(arg "" "" "LIBRARIES;LABELS" ${ARGN})
  file(GLOB sources CONFIGURE_DEPENDS "${CMAKE_SOURCE_DIR}/tests/${folder}/*.cpp")
  if(NOT sources OR ("core" IN_LIST arg_LABELS AND NOT LOOPWRIGHT_CORE_TESTS MATCHES "^(all|ON)$"
                     AND NOT folder IN_LIST LOOPWRIGHT_CORE_TESTS))
    return()
  endif()
  add_executable(test_${folder} ${sources})
  target_include_directories(test_${folder} PRIVATE "${CMAKE_SOURCE_DIR}/tests")
  target_compile_definitions(test_${folder} PRIVATE LOOPWRIGHT_SOURCE_DIR="${CMAKE_SOURCE_DIR}")
  target_link_libraries(test_${folder} PRIVATE loopwright_options ${arg_LIBRARIES} loopwright_test_support
                                              GTest::gtest GTest::gmock GTest::gtest_main)
  loopwright_joined(test_${folder})
  if(folder STREQUAL "base") # below the units, whose libraries the shared headers need
  elseif(arg_LIBRARIES MATCHES "loopwright_")
    loopwright_pch_as(test_${folder} loopwright_test_headers)
  else() # runs a program, knows nothing of the core
    loopwright_pch(test_${folder} program_test)
  endif()
  gtest_discover_tests(test_${folder} DISCOVERY_MODE PRE_TEST TEST_PREFIX "${folder}." PROPERTIES LABELS
                       "${arg_LABELS}")
endfunction()
